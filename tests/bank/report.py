"""A report to read: prompts, faults, and how the answers spread."""

from collections import Counter, defaultdict
from dataclasses import dataclass, field

from tests.bank.drawn import asked, recomputed
from tests.bank.kitchen import names_animal
from tests.bank.reading import careless, grade, unreadable
from tests.bank.rules import RULES, faults_by_rule
from tests.bank.secrets import leaks
from tests.mornings import many
from warmup import skills
from warmup.randomness import SeededRandom

DIFFERENT = 30
"""A level has so many different prompts at least."""
FEW = frozenset({"count-back:from-5", "count:one-to-100"})
"""But for these: three starts of a count back from five, and the one whole count to a hundred."""


@dataclass
class Report:
    """What was found in one skill; ``rules`` holds the faults by the rule they break."""

    made: int = 0
    wrong: Counter[str] = field(default_factory=Counter)
    rules: dict[str, Counter[str]] = field(default_factory=lambda: defaultdict(Counter))
    broken: Counter[str] = field(default_factory=Counter)
    animal: int = 0
    says: list[str] = field(default_factory=list)
    distinct: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))
    answers: dict[str, Counter[str]] = field(default_factory=lambda: defaultdict(Counter))
    wordings: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))


def judge(skill: str, count: int) -> Report:
    """Draw ``count`` prompts an item and judge each."""
    report = Report()
    for p, morning in asked(skill, count):
        report.made += 1
        report.says.append(p.say)
        report.distinct[p.level].add(f"{p.say}|{sorted(p.given.items(), key=str)}")
        report.answers[p.item][p.answer] += 1
        report.wordings[p.level].add(p.wording)
        report.animal += names_animal(p, morning.animal)
        faults = [*unreadable(p.say), *careless(p), *leaks(p)]
        complaint = recomputed(p)
        if complaint:
            faults.append(f"answer: {complaint}")
        if p.seconds not in (20, 40, 60, 120):
            faults.append(f"{p.seconds} seconds")
        if not all((p.say, p.answer, p.working, p.watch_for, all(c.text for c in p.cues), len(p.cues) == 3)):
            faults.append("an empty field")
        for fault in faults:
            report.wrong[f"{p.item} [{p.wording}]: {fault} — {p.say} → {p.answer}"] += 1
        for rule, found in faults_by_rule(p, morning).items():
            report.broken[rule] += 1
            for fault in found:
                report.rules[rule][f"{p.item} [{p.wording}]: {fault} — {p.say} → {p.answer}"] += 1
    return report


def _print_prompt(item: str, n: int) -> None:
    able = [m for m in many(288) if skills.askable(item, m)]
    p = skills.prompt(item, able[n * 41 % len(able)], SeededRandom("read", item, n))
    print(f"\n{p.item} [{p.wording}] {p.seconds}s guess {p.guess}")
    if p.do:
        print(f"  do     {p.do}")
    print(f"  say    {p.say}")
    print(f"  answer {p.answer}  {p.accept}\n  work   {p.working}\n  watch  {p.watch_for}")
    print(f"  table  {p.table}\n  given  {dict(p.given)}")
    for cue in p.cues:
        print(f"  cue    {cue.text}" + (f"  [{cue.picture.words()}]" if cue.picture else ""))
    print(f"  see    {p.picture.words() if p.picture else '-'}")


def _print_rules(report: Report, most: int) -> None:
    for rule in RULES:
        if report.rules[rule]:
            print(f"   RULE {rule}: {report.broken[rule]} of {report.made} prompts")
        shown: Counter[str] = Counter()
        for fault, times in report.rules[rule].most_common():
            kind = fault.partition(":")[0]
            shown[kind] += 1
            if shown[kind] == 1 and len(shown) <= most:
                print(f"      x{times} {fault}")


def main(names: list[str], *, only_rules: bool) -> None:
    """Print prompts, faults, and how the answers spread; or only the faults, by rule."""
    made = animal = 0
    broken: Counter[str] = Counter()
    for name in names or list(skills.SKILLS):
        report = judge(name, 60 if only_rules else 200)
        made, animal, broken = made + report.made, animal + report.animal, broken + report.broken
        if not only_rules:
            for item in report.answers:
                for n in range(2):
                    _print_prompt(item, n)
        level, beat = grade(report.says)
        print(f"\n== {name}: {report.made} prompts; grade {level:.2f}, {beat:.2f} syllables a word")
        if not only_rules:
            ways = {k: len(v) for k, v in report.wordings.items()}
            print("   distinct:", {k: len(v) for k, v in report.distinct.items()}, "ways:", ways)
            for key, different in report.distinct.items():
                if len(different) < DIFFERENT and f"{name}:{key}" not in FEW:
                    print(f"   WRONG {key}: only {len(different)} different prompts, {DIFFERENT} are wanted")
            print("   answers:", {k: v.most_common(4) for k, v in report.answers.items()})
        print(f"   the animal: {report.animal} of {report.made}")
        _print_rules(report, 25)
        for fault, times in report.wrong.most_common(20):
            print(f"   WRONG x{times} {fault}")
    print(f"\n== all: {made} prompts; the animal in {animal}, {100 * animal / made:.1f} in 100")
    for rule in RULES:
        print(f"   {broken[rule]:>6} {rule}")
