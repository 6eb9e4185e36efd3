"""The worked steps of the place value strand, said and shown one after the other.

The numbers of a step are one of these acts:

* `worth`: a `digit` of a `place` and what it is `worth`, 0 for an empty place; `stands`: a `digit`
  and the `place` that it stands for; `digits`: the `digits` of a `number`, by place;
* `regroup`: so many (`count`) of a place are one of the place `into` and so many `left`;
* `add`: the `terms` and their `total`;
* `part`: a `part` of the number is so many (`digit`) of a `place`;
* `lay`: so many (`digit`) of a `place` are laid, which makes `so_far`;
* `say`: a `number` is said in words;
* `count`: the numbers `counted`, `from` where, `by` which step and `to` where;
* `compare`: the `digits` of two numbers in a `place`, or two `numbers`, with their `sign`; `keep`:
  the `number` that is compared `with` the third; `end`: the `number` that is the `which`.
"""
