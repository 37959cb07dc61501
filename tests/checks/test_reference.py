"""The page of findings lists every rule there is."""

import re
from pathlib import Path

import pytest

from workbench.circuit.graph import ProblemKind

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "reference" / "findings.md").read_text(encoding="utf-8")
SOURCE = "\n".join(path.read_text(encoding="utf-8") for path in (ROOT / "workbench" / "checks").glob("*.py"))

IDS = {
    *re.findall(r'\bid="([a-z-]+)"', SOURCE),
    *re.findall(r'_Rate\("([a-z-]+)"', SOURCE),
    *(f"network-{kind.value.replace(' ', '-')}" for kind in ProblemKind),
}


@pytest.mark.parametrize("rule", sorted(IDS))
def test_a_rule_stands_on_the_page(rule):
    assert f"`{rule}`" in PAGE


def test_the_page_lists_no_rule_that_is_gone():
    listed = set(re.findall(r"^\| (`[^|]+`) \|", PAGE, re.MULTILINE))
    named = {name for cell in listed for name in re.findall(r"`([a-z-]+)`", cell)}

    assert named == IDS
