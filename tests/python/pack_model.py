"""A second model of what a pack allows, written from the prose of the canon and not from the core's sources.

It reads a pack as a plain dictionary (as `tomllib` or `json` give it), knows the forbidden states in its own words, and goes through
every order by breadth-first search: the straight way, pauses, and one slip anywhere (the last mark taken back, an answer changed).

The forbidden states, as the canon lists them: acid in the loop with valves not proved shut; the drinking-water valve open before the
rinse is proved; acid without leak test, vent, protection or eyewash; acid in a hot loop or with a heat source enabled; acid on unknown
or forbidden material; acid before water; acid beside hypochlorite or alkali; a pump running dry; a loop shut at both ends with heat and
no relief; an element powered with the tank not full; a fitting opened hot or under pressure; covers off with any supply not proved dead
or the charge not waited out; power on with cover or earth off or electrics damp; the fan guard off with restart possible; spray with
power on, on bare electrics or on a hot coil; energising after an alarm or without a detector reading; the refrigerant circuit opened by
the uncertified; the compressor without water or air; an insulation test with electronics connected; handed over with scald and
legionella checks open; sealed with a setting away. Also: a liquid changed with power on, and filling without protection against
backflow. What is not known counts as not safe.
"""

from itertools import combinations, product

LAPSING = ("supply", "further-supplies", "heat-sources", "valves", "room", "gas")
# What stays believed although its mark was taken back: acid does not go away by a wrong tick.
LINGERS = {
    ("loop", "acid"), ("loop", "spent"), ("loop", "neutraliser"), ("vessel", "acid-mix"), ("vessel", "alkali-mix"),
    ("rinse-check", "unproved"), ("alkali-residue", "present"), ("stored-charge", "present"),
}  # fmt: skip
LEFT_BEHIND = {
    ("rinse-check", "unproved"), ("loop", "acid"), ("loop", "spent"), ("loop", "neutraliser"), ("vessel", "acid-mix"),
    ("vessel", "alkali-mix"), ("service-pump", "running"), ("covers", "off"), ("fan-guard", "off"), ("earth", "off"),
    ("electronics", "disconnected"),
}  # fmt: skip


def forbidden(f):
    """The forbidden states that these facts are in."""
    is_ = lambda fact, *values: f.get(fact) in values  # noqa: E731
    acid_inside = is_("loop", "acid", "spent")
    acid_near = acid_inside or is_("vessel", "acid-mix")
    chemical = acid_inside or is_("loop", "neutraliser")
    heat_possible = is_("supply", "on") and not is_("heat-sources", "locked-out")
    shut = is_("valves", "shut", "proved-shut")
    dirty = chemical or is_("rinse-check", "unproved") or (is_("loop", "rinse") and not is_("rinse-check", "proved"))
    dead = is_("supply", "proved-dead") and is_("further-supplies", "none", "proved-dead")
    pump = is_("unit-pump", "running") or is_("service-pump", "running")
    dressed = all(is_(part, "protected") for part in ("eyes", "hands", "body")) and is_("eyewash", "at-hand")
    judged = {
        "acid and valves not proved shut": acid_inside and not is_("valves", "proved-shut"),
        "drinking-water valve open before the rinse is proved": dirty and not shut,
        "an old proof of the rinse outlasts new acid": chemical and is_("rinse-check", "proved"),
        "acid without vent": chemical and not is_("loop-vent", "vented"),
        "acid without protection or eyewash": acid_near and not dressed,
        "acid in a hot loop or with a heat source enabled": acid_inside and (not is_("loop-heat", "cold") or heat_possible),
        "acid on unknown or forbidden material": acid_inside and not is_("exchanger-acid", "allowed"),
        "acid beside hypochlorite or alkali": acid_near and not is_("alkali-residue", "none"),
        "pump running dry": pump and is_("loop", None, "empty"),
        "loop shut with heat and no relief": shut and heat_possible and not is_("loop-vent", "vented"),
        "covers off, not dead": is_("covers", "off") and not (dead and is_("stored-charge", "waited-out")),
        "power on, not closed": is_("supply", "on")
        and (is_("covers", "off") or is_("earth", "off") or is_("fan-guard", "off") or is_("dampness", "damp")),
        "fan guard off, restart possible": is_("fan-guard", "off") and not is_("supply", "proved-dead"),
        "power on after an alarm": is_("supply", "on") and is_("gas", "alarm"),
        "element, tank not full": (heat_possible or is_("further-supplies", "on")) and is_("tank", "not-full"),
        "compressor without water": heat_possible and is_("loop", "empty", "acid", "spent", "neutraliser", "rinse"),
        "compressor without air": heat_possible and is_("air-path", "blocked"),
    }
    return {name for name, holds in judged.items() if holds}


def on_the_way(before, after, acts):
    """What is forbidden about the change itself, and about what is done in it."""
    was = lambda fact, *values: before.get(fact) in values  # noqa: E731
    will = lambda fact, *values: after.get(fact) in values  # noqa: E731
    becomes = lambda fact, value: will(fact, value) and not was(fact, value)  # noqa: E731
    liquid_changes = before.get("loop") is not None and before.get("loop") != after.get("loop")
    may_start = not will("supply", "off", "proved-dead") and not will("heat-sources", "locked-out")
    judged = {
        "acid before water": (becomes("loop", "acid") and not was("loop", "water", "spent"))
        or (becomes("vessel", "acid-mix") and not was("vessel", "water")),
        "valves opened on an unknown loop": becomes("valves", "open") and after.get("loop") is None,
        "liquid changed with power on": liquid_changes and may_start,
        "filled without protection against backflow": liquid_changes
        and will("loop", "water", "rinse", "glycol")
        and not will("backflow", "protected"),
        "opened in gas": becomes("covers", "off") and (not will("gas", "clear") or will("ignition-sources", "present")),
        "spray": "spray" in acts
        and not (was("supply", "proved-dead") and was("electrics", "covered") and was("coil", "cold")),
        "energised": "energise" in acts
        and not (
            was("covers", "on") and was("earth", "on") and was("fan-guard", "on") and was("dampness", "dry") and was("gas", "clear")
        ),
        "insulation test": "insulation-test" in acts
        and not (was("electronics", "disconnected") and was("supply", "proved-dead")),
        "handed over unchecked": "hand-over" in acts
        and not (will("scald-check", "done", "not-needed") and will("reheat", "reached", "handed-over", "not-needed")),
        "fitting opened hot or under pressure": "open-fitting" in acts
        and not (was("fitting-pressure", "relieved") and was("fitting-heat", "cold")),
        "circuit opened by the uncertified": "open-circuit" in acts and not was("certificate", "held"),
        "water circuit opened hot": "open-water" in acts and not was("loop-heat", "cold"),
    }
    return {name for name, holds in judged.items() if holds}


def wrong_with(before, after, acts):
    return (forbidden(after) - forbidden(before)) | on_the_way(before, after, acts)


def pair(text):
    fact, _, value = text.partition("=")
    return fact.strip(), value.strip()


class Model:
    """A pack, gone through."""

    def __init__(self, pack):
        self.pack = pack
        self.steps = [dict(step, phase=phase) for phase in pack["phase"] for step in phase["step"]]
        self.number = {step["id"]: number for number, step in enumerate(self.steps)}
        self.questions = [self._question(condition) for condition in pack.get("condition") or []]
        self.asked = {question["id"]: number for number, question in enumerate(self.questions)}
        self.settings = {setting["id"]: 1 << n for n, setting in enumerate(pack.get("excursion") or [])}
        self.starts = 1
        for condition in pack.get("condition") or []:
            self.starts *= len(condition["option"])
        for step in self.steps:
            step["whens"] = [pair(text) for text in step.get("when") or []]
            earlier = [self.number[name] for name in step.get("after") or []]
            for phase in step["phase"].get("after") or []:
                earlier += [n for n, other in enumerate(self.steps) if other["phase"]["id"] == phase]
            step["earlier"] = earlier
            step["needed"] = {pair(text) for text in step.get("needs") or []}
        self.decided = [
            sum(1 << n for n, step in enumerate(self.steps) if question["id"] in {name for name, _ in step["whens"]})
            for question in self.questions
        ]
        self._waits, self._changes, self._answers, self._taken_back = {}, {}, {}, {}

    def _question(self, condition):
        """Answers that mean the same everywhere are one answer."""
        kinds = {}
        for option in condition["option"]:
            name = f"{condition['id']}={option['id']}"
            meant = tuple(name in map(str, step.get("when") or []) for step in self.steps)
            kinds.setdefault((meant, tuple(option.get("sets") or [])), option)
        return {"id": condition["id"], "options": list(kinds.values())}

    def concerns(self, step, answers):
        """True, False, or None where a question comes first."""
        asked_first = False
        for condition in {condition for condition, _ in step["whens"]}:
            given = answers[self.asked[condition]]
            if given is None:
                asked_first = True
            elif (condition, self.questions[self.asked[condition]]["options"][given]["id"]) not in step["whens"]:
                return False
        return None if asked_first else True

    def waits(self, answers):
        """For each step that concerns the unit, the steps that must be behind it, as bits."""
        if answers not in self._waits:
            concerned = [self.concerns(step, answers) for step in self.steps]
            table = []
            for number, step in enumerate(self.steps):
                bits = sum({1 << e for e in step["earlier"] if concerned[e] is not False})
                table.append((number, bits) if concerned[number] else None)
            open_ = sum(1 << n for n, concern in enumerate(concerned) if concern is not False)
            self._waits[answers] = [entry for entry in table if entry], open_
        return self._waits[answers]

    def change(self, number, passage, begins, facts):
        """Facts after a passage, or None where it is forbidden; and everything that is wrong with it."""
        key = number, passage, begins, facts
        if key not in self._changes:
            self._changes[key] = self._judge(self.steps[number], passage, begins, dict(facts))
        return self._changes[key]

    def _judge(self, step, passage, begins, before):
        says = step.get("starts" if passage == "start" else "sets") or []
        sets = dict(pair(text) for text in says)
        if sets.get("loop") == "acid":
            sets["rinse-check"] = "unproved"
        clears = (step.get("clears") or []) if passage == "done" else []
        acts = (step.get("acts") or []) if passage == "start" or not step.get("dwell") else []

        def then(facts):
            return {fact: value for fact, value in facts.items() if fact not in clears} | sets

        after, wrong = then(before), set()
        bad = wrong_with(before, after, acts)
        if bad:
            return None, {("unguarded", step["id"])}
        if begins:
            needed = {pair(text)[0] for text in step.get("needs") or []}
            loose = [fact for fact in LAPSING if fact in before and fact not in needed]
            for size in range(1, len(loose) + 1):
                for lapsed in combinations(loose, size):
                    less = {fact: value for fact, value in before.items() if fact not in lapsed}
                    if wrong_with(less, then(less), acts):
                        wrong.add(("unguarded", step["id"]))
        for fact, value in unseen(before):
            if fact not in sets and wrong_with(before | {fact: value}, after | {fact: value}, acts) - forbidden(after):
                wrong.add(("outside", step["id"]))
        for fact, value in unseen(after):
            if forbidden(after | {fact: value}) - forbidden(after):
                wrong.add(("outside", step["id"]))
        return frozen(after), wrong

    def answers_to(self, number, facts):
        """Every answer to a question with the facts then; what brings danger is told by its name."""
        if (number, facts) not in self._answers:
            self._answers[number, facts] = list(self._answer(number, dict(facts)))
        return self._answers[number, facts]

    def _answer(self, number, before):
        for option, chosen in enumerate(self.questions[number]["options"]):
            after = before | dict(pair(text) for text in chosen.get("sets") or [])
            bad = forbidden(after) - forbidden(before)
            yield option, None if bad else frozen(after), {("answer", self.questions[number]["id"])} if bad else set()

    def taken_back(self, number, facts):
        """The facts after a mark was taken back: what still is as its step set it is not known any more."""
        if (number, facts) not in self._taken_back:
            step = self.steps[number]
            said = {pair(text) for text in (step.get("sets") or []) + (step.get("starts") or [])} - LINGERS
            self._taken_back[number, facts] = facts - said
        return self._taken_back[number, facts]

    def explore(self, slips):
        """Every state, what is wrong, the ends, and the edges. A state: behind, running, answers, facts, away, last mark."""
        start = (0, 0, (None,) * len(self.questions), frozen({}), 0, -1 if slips else None)
        seen, order, wrong, edges, ends, done = {start: 0}, [start], set(), [], [], set()
        for at, state in enumerate(order):
            for target, faults, passed in self.moves(state, slips):
                wrong |= faults
                if target is None:
                    continue
                if passed is not None:
                    done.add(passed)
                if target not in seen:
                    seen[target] = len(order)
                    order.append(target)
                edges.append((at, seen[target]))
            behind, _, answers, facts, away, _ = state
            if self.waits(answers)[1] & ~behind == 0:
                left = LEFT_BEHIND & set(facts)
                if left or forbidden(dict(facts)):
                    wrong.add(("left", ""))
                elif away:
                    wrong.add(("away", ""))
                else:
                    ends.append(at)
        return {"states": len(order), "transitions": len(edges), "wrong": wrong, "trap": trapped(len(order), edges, ends), "done": done}

    def moves(self, state, slips):
        """(state then or None, what is wrong, the step that was done or None)."""
        behind, running, answers, facts, away, last = state
        for number, earlier in self.waits(answers)[0]:
            bit, step = 1 << number, self.steps[number]
            goes = bool(running & bit)
            if behind & bit or (not goes and earlier & ~behind):
                continue
            mark = None if last is None else number
            home = away & ~self.settings.get(step.get("homes"), 0)
            if step.get("may-skip"):
                yield (behind | bit, running & ~bit, answers, facts, home, mark), set(), None
            passage = "start" if step.get("dwell") and not goes else "done"
            open_questions = [self.asked[name] for name in step.get("asks") or [] if answers[self.asked[name]] is None]
            ways = [(answers, facts)]
            if passage == "done":
                for question in open_questions:
                    more = []
                    for given, known in ways:
                        for option, then, faults in self.answers_to(question, known):
                            if then is None:
                                yield None, faults, None
                            else:
                                more.append((given[:question] + (option,) + given[question + 1 :], then))
                    ways = more
            for given, known in ways:
                if not goes and not step["needed"] <= known:
                    continue
                then, faults = self.change(number, passage, not goes, known)
                if then is None:
                    yield None, faults, None
                elif passage == "start":
                    yield (behind, running | bit, given, then, away, mark), faults, None
                else:
                    out = (away | self.settings.get(step.get("opens"), 0)) & ~self.settings.get(step.get("homes"), 0)
                    yield (behind | bit, running & ~bit, given, then, out, mark), faults, number
        if slips and last is not None:
            yield from self.slips(state)

    def slips(self, state):
        behind, running, answers, facts, away, last = state
        if last >= 0:
            bit = 1 << last
            yield (behind & ~bit, running & ~bit, answers, self.taken_back(last, facts), away, None), set(), None
        marked = behind | running
        for question, given in enumerate(answers):
            if given is None:
                continue
            settled = marked & self.decided[question]
            for option, then, faults in self.answers_to(question, facts):
                if option == given or settled:
                    continue
                if then is None:
                    yield None, faults, None
                    continue
                yield (behind, running, answers[:question] + (option,) + answers[question + 1 :], then, away, None), faults, None

    def verdict(self):
        """Proved or not, the faults by kind and step, and the sizes of the spaces."""
        straight = self.explore(slips=False)
        faults = set(straight["wrong"])
        if not faults and straight["trap"]:
            faults.add(("trap", ""))
        if not faults:
            faults = {("dead", step["id"]) for n, step in enumerate(self.steps) if n not in straight["done"]}
        sizes = {"straight": (straight["states"], straight["transitions"])}
        if not faults:
            mended = self.explore(slips=True)
            faults = set(mended["wrong"])
            sizes["mended"] = (mended["states"], mended["transitions"])
        return faults, sizes


def frozen(facts):
    return frozenset(facts.items())


def unseen(facts):
    """What can come to pass unseen: a supply that hangs at no lock comes back, a valve that is not proved shut passes."""
    loose = facts.get("tag") != "tagged"
    if loose and facts.get("supply") in (None, "off"):
        yield "supply", "on"
    if loose and facts.get("further-supplies") == "off":
        yield "further-supplies", "on"
    if facts.get("valves") == "shut":
        yield "valves", "open"


def trapped(count, edges, ends):
    """Is there a state from which no end can be reached?"""
    into = [[] for _ in range(count)]
    for origin, target in edges:
        into[target].append(origin)
    leads, todo = set(), list(ends)
    while todo:
        at = todo.pop()
        if at not in leads:
            leads.add(at)
            todo += into[at]
    return len(leads) < count


def every_combination(model):
    """Every combination of answers, to count them another way."""
    return list(product(*(range(len(condition["option"])) for condition in model.pack.get("condition") or [])))
