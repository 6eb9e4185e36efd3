"""For each manipulative its facts, computed from its traits: one module each.

A module says which manipulative it is about, as `MANIPULATIVE = "Clock"`, and has a function
`facts(traits)`, in which a trait that is not given has its default value. `lessons.tasks.facts`
finds the modules by itself.
"""
