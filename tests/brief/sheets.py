# SPDX-License-Identifier: MIT
"""Sheets to hold what is shown against: one for each act, random instruments, and sheets that are crossed of
others. Those of acts and random ones each as the text the program reads, and as it says everything by itself, its
profile laid under it."""
import copy
import os
import random
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "oracle"))
import jobs as random_jobs  # noqa: E402
import sheet  # noqa: E402
import yaml  # noqa: E402

import acts  # noqa: E402

# What holds where neither a sheet nor its profile says anything.
UNSAID = {"attack": "medium", "instrument": {"rod": "unknown"}}


def laid_under(profile, doc):
    """A sheet over its profile: mappings key by key, everything else whole."""
    if not (isinstance(profile, dict) and isinstance(doc, dict)):
        return doc
    merged = dict(profile)
    for key, value in doc.items():
        merged[key] = laid_under(profile[key], value) if key in profile else value
    return merged


def whole(doc):
    """The sheet with all its profile says, as the oracle reads one."""
    if "profile" in doc:
        with open(f"profiles/{doc['profile']}.yaml", encoding="utf-8") as file:
            doc = laid_under(laid_under(UNSAID, yaml.safe_load(file)), doc)
    whole_doc = yaml.load(yaml.dump(doc).replace("'~'", "~"), sheet.LOADER)
    for reading in whole_doc["readings"]:
        if reading.get("relief") in ("wide", "ping", "none"):  # heard, not measured
            del reading["relief"]
    return whole_doc


def every(randoms, step=1):
    """(name, text, whole document) of each act's sheets, or of one in `step`, and of so many random
    ones."""
    for name, _, doc in acts.ROWS[::step]:
        yield name, yaml.dump(doc, sort_keys=False).replace("'~'", "~"), whole(doc)
    for number in range(randoms):
        _, text = random_jobs.make("shown", number)
        yield f"random {number}", text, yaml.load(text, sheet.LOADER)


TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
# The sheets that the words are kept of, and the examples.
KEPT = [os.path.join(TOP, "tests", "words", "sheets"), os.path.join(TOP, "examples")]


def kept(folder):
    """The texts of a folder's sheets, by name."""
    for name in sorted(name for name in os.listdir(folder) if name.endswith(".yaml")):
        with open(os.path.join(folder, name), encoding="utf-8") as file:
            yield file.read()


class Crosser:
    """Sheets with some keys of others: what no one would think of together, and few of them make no sense."""

    def __init__(self, seed):
        self.rng = random.Random(seed)
        self.docs = [doc for _, _, doc in acts.ROWS]
        self.docs += [yaml.load(text, sheet.LOADER) for folder in KEPT for text in kept(folder)]

    def take_part(self, doc, other):
        key = self.rng.choice([key for key in other if key not in ("sillet", "profile", "readings")])
        if isinstance(doc.get(key), dict) and isinstance(other[key], dict) and self.rng.random() < 0.8:
            inner = self.rng.choice(list(other[key]))
            doc[key][inner] = copy.deepcopy(other[key][inner])
        else:
            doc[key] = copy.deepcopy(other[key])

    def take_readings(self, doc, other):
        """Some of another visit's, or all of it as one more visit; or one reading less."""
        how = self.rng.random()
        read = copy.deepcopy(self.rng.choice(other["readings"])) or {}
        last = self.rng.choice(doc["readings"][-2:])
        if how < 0.6:
            for key in self.rng.sample(list(read), min(len(read), self.rng.choice([1, 1, 2, 3]))):
                last[key] = read[key]
        elif how < 0.85:
            doc["readings"].append(read)
        elif doc["readings"][-1]:
            doc["readings"][-1].pop(self.rng.choice(list(doc["readings"][-1])))

    def cross(self):
        doc = copy.deepcopy(self.rng.choice(self.docs))
        for _ in range(self.rng.choice([1, 1, 2, 2, 3, 4])):
            other = self.rng.choice(self.docs)
            with_readings = doc.get("readings") and other.get("readings") and self.rng.random() < 0.65
            (self.take_readings if with_readings else self.take_part)(doc, other)
        return yaml.dump(doc, sort_keys=False, allow_unicode=True).replace("'~'", "~")


def crossed(count):
    """The texts of so many crossed sheets, always the same."""
    crosser = Crosser("crossed")
    return [crosser.cross() for _ in range(count)]
