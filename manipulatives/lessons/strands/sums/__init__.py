"""What addition and subtraction share: their tasks, hops on a line, blocks and written sums.

The numbers of a step are one of these acts; in a column they have its `place` too:

* `start`: the `numbers` with which a count or a row of hops starts; `stay`: 0 is counted or hopped
  on or back, so it stays at the `number`;
* `count`: the numbers `counted`, `from` where, `by` which step and `to` where; in a column also how
  many `steps` that is, where the number of steps is what comes out;
* `hop`: `from` a number `by` so much `to` another, below 0 back; where a number is hopped in parts,
  the `whole` and its `parts`;
* `bridge`: `from` a number `by` so much `to` another in two `parts`, by way of a full `ten`;
* `far`: how `far` it is `from` a number `to` another;
* `add`: the `terms` and their `total`; `take`: so many (`take`) `from` a number, so many `left`;
  with the `answer` in the step that ends a task; `carried` where the last number is a carry;
* `part`: a `part` is so many (`digit`) of a place;
* `digit`: the `digit` of a place, and what it is `worth` where that is written; `empty`: no digit
  is left;
* `compare`: two `numbers`, with their `sign`; with the `answer` where a statement is judged by it;
* `regroup`: so many (`count`) of a place become so many (`gives`) of the place `into`; so many are
  `left` of the first, and the other has so many `now`, where it is seen at once;
* `pass`: the `places` that have nothing to give, so the `digit` of the place after them gives;
* `drop`: so many (`zeros`) in front of the `number` are not needed;
* `read`: the `number` that comes out of an `operation` on `numbers`;
* `plan`: what is to be done: an `operation` on `numbers`, None for the one that is missing, and the
  `result`, None where that is asked; `lay`: a `number` is laid, which makes `so_far`;
* `judge`: the `answer` about a statement that no number decides.
"""
