from __future__ import annotations

from itertools import permutations

import pytest

from manipulatives.lessons.tasks.chance import Chance


def test_the_numbers_are_those_that_the_generator_is_published_with():
    """The Mersenne Twister's authors print its first outputs for one key (mt19937ar.out, 2002).

    Matsumoto and Nishimura seed with the array 0x123, 0x234, 0x345, 0x456; Python does the same
    with a whole number, 32 bits at a time, and makes one number of two outputs (genrand_res53).
    """
    outputs = [1067595299, 955945823, 477289528, 4107218783]
    chance = Chance(0x123 | 0x234 << 32 | 0x345 << 64 | 0x456 << 96)
    for high, low in zip(outputs[::2], outputs[1::2], strict=True):
        assert chance.random() == ((high >> 5) * 2**26 + (low >> 6)) / 2**53


def test_only_the_promised_method_of_python_is_used(monkeypatch):
    def unpromised(*_args, **_kwargs):
        raise AssertionError("a method without a promise was used")

    names = ("randrange", "randint", "choice", "choices", "shuffle", "sample", "getrandbits")
    for name in names:
        monkeypatch.setattr(f"random.Random.{name}", unpromised)
    chance = Chance(90213)
    assert 0 <= chance.below(144) < 144
    assert chance.choose("abc") in "abc"
    assert len(chance.sample(range(144), 5)) == 5
    assert sorted(chance.shuffled("abc")) == ["a", "b", "c"]


@pytest.mark.parametrize("seed", [0, 90213, "time.read_hour 90213"])
def test_the_same_seed_gives_the_same_choices(seed):
    one, other = Chance(seed), Chance(seed)
    assert one.sample(range(1000), 20) == other.sample(range(1000), 20)
    assert one.below(10**6) == other.below(10**6)


def test_another_seed_gives_other_choices():
    samples = {tuple(Chance(seed).sample(range(1000), 5)) for seed in range(200)}
    assert len(samples) == 200


def test_a_number_and_its_text_are_different_seeds():
    assert Chance(7).random() != Chance("7").random()


def test_a_longer_sample_only_adds_to_a_shorter_one():
    longest = Chance(7).sample(range(144), 144)
    assert all(Chance(7).sample(range(144), k) == longest[:k] for k in range(144))
    assert sorted(longest) == list(range(144))


def test_every_order_is_as_likely():
    """Chi-squared with 23 degrees of freedom: above 49.7 once in a thousand (printed tables)."""
    counts = dict.fromkeys(permutations("abcd"), 0)
    for seed in range(24_000):
        counts[tuple(Chance(seed).shuffled("abcd"))] += 1
    assert sum((count - 1000) ** 2 / 1000 for count in counts.values()) < 49.7


def test_a_sample_does_not_look_at_what_it_does_not_pick():
    looked = []

    class Long:
        def __len__(self):
            return 10**9

        def __getitem__(self, place):
            looked.append(place)
            return place

    picked = Chance(7).sample(Long(), 40)
    assert looked == picked
    assert len(set(picked)) == 40


def test_choosing_from_nothing_says_so():
    with pytest.raises(ValueError, match="give 1 or more"):
        Chance(1).below(0)
    with pytest.raises(ValueError, match="give 1 or more"):
        Chance(1).choose([])
    with pytest.raises(ValueError, match="3 items cannot be picked from 2"):
        Chance(1).sample([1, 2], 3)
