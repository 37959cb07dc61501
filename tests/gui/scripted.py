"""Stands where dialogs would: it holds the answers, and what was said."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from workbench.gui.widgets import Sign

__all__ = ["Said", "ScriptedMessages"]


@dataclass(frozen=True, slots=True)
class Said:
    """One dialog that would have opened."""

    headline: str
    sentence: str
    answers: tuple[str, ...]
    sign: Sign
    details: str


@dataclass(slots=True)
class ScriptedMessages:
    """Answers from lists; a question without an answer in them fails the test."""

    answers: list[str] = field(default_factory=list)
    open_paths: list[Path | None] = field(default_factory=list)
    save_paths: list[Path | None] = field(default_factory=list)
    said: list[Said] = field(default_factory=list)
    suggested: list[Path] = field(default_factory=list)

    def tell(self, headline: str, sentence: str = "", *, sign: Sign = Sign.NOTE, details: str = "") -> None:
        self.said.append(Said(headline, sentence, (), sign, details))

    def ask(
        self,
        headline: str,
        answers: Sequence[str],
        *,
        sentence: str = "",
        sign: Sign = Sign.NOTE,
        details: str = "",
    ) -> str:
        self.said.append(Said(headline, sentence, tuple(answers), sign, details))
        answer = self.answers.pop(0)
        assert answer in answers
        return answer

    def open_path(self, _title: str, _folder: Path, _kinds: str) -> Path | None:
        return self.open_paths.pop(0)

    def save_path(self, _title: str, suggested: Path, _kinds: str) -> Path | None:
        self.suggested.append(suggested)
        return self.save_paths.pop(0)
