"""The shapes strand: its skills, tasks, worked steps and foreseeable mistakes.

The numbers of a step are one of these acts:

* `count`: the numbers `counted`, `from` where, `by` which step and `to` where; sides, vertices,
  corners, shares or squares (`what`);
* `find`: how `many` there are of something (`what`) that is seen, tried or folded; with it the
  `vertices` of a name, or the `equal sides` of four right angles;
* `sides`: so many `straight` and so many `curved` ones;
* `add`: the `terms` and their `total`; `fit`: a sheet's corner `fits` so many `of` all corners;
* `name`: whether the shape `is` so called; `match`: whether two parts `match`;
* `open` and `mid side`: the shape is open, or has a point in the middle of a side;
* `draw`: a `side` by a `step` across and down; `cut`: the `number` of a cut;
* `compare`: the `areas` of shares in half squares, when these are counted;
* `share`: into how many `shares`, and whether they are `equal`.
"""
