"""How findings are counted and told in words."""

from workbench.checks import Finding, Severity
from workbench.gui.widgets import Sign
from workbench.gui.widgets.tip import tip_text
from workbench.project.document import Project

__all__ = [
    "count_sign",
    "count_words",
    "finding_sign",
    "remedy_label",
    "same_key",
    "source_line",
    "whole_words",
]

_NOUNS = {Severity.FAIL: "failure", Severity.WARN: "warning", Severity.INFO: "note"}
_SIGNS = {Severity.FAIL: Sign.FAILS, Severity.WARN: Sign.WARNS, Severity.INFO: Sign.NOTE}


def count_words(severity: Severity, count: int) -> str:
    """Return "no failures", "1 warning", "3 notes"."""
    noun = _NOUNS[severity]
    return f"{count or 'no'} {noun if count == 1 else f'{noun}s'}"


def count_sign(severity: Severity, count: int) -> Sign:
    """Return the sign beside a count; nothing found is a pass."""
    return _SIGNS[severity] if count else Sign.PASSES


def finding_sign(finding: Finding) -> Sign:
    """Return the sign of a finding."""
    return _SIGNS[finding.severity]


def source_line(finding: Finding, project: Project) -> str:
    """Return the source of a finding's limit and whom it is about."""
    linked = " (linked)" if project.linked and len(finding.channels) > 1 else ""
    memory = "" if not finding.from_memory or "from memory" in finding.source else " (from memory)"
    return f"{finding.source}{memory} · {finding.subject}{linked}"


def whole_words(finding: Finding, source: str) -> str:
    """Return a finding told whole for a tip, a paragraph each: what, why, what to do, by whose word."""
    return tip_text(finding.headline, finding.why, finding.remedy_text, source)


def remedy_label(finding: Finding | None) -> str:
    """Return what the button says that mends a finding; empty where none does."""
    return finding.remedy.label if finding and finding.remedy else ""


def same_key(finding: Finding) -> tuple[str, str]:
    """Return what makes two findings of two results the same one."""
    return finding.id, finding.subject
