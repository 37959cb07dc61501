"""``backporch report FILE``: every figure and finding."""

import argparse
from pathlib import Path
from typing import Any

from workbench.checks import Severity
from workbench.cli.output import print_json, print_text
from workbench.exports.report import report_object, report_text
from workbench.files.project_file import read_project
from workbench.pipeline import Pipeline

__all__ = ["add"]

FINDING_FAILS = 1
"""Exit code with ``--strict`` when a finding fails. [1]"""


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("report", help="print every figure and finding of a project")
    parser.add_argument("file", type=Path, metavar="FILE", help="the project")
    parser.add_argument("--json", action="store_true", help="as JSON, SI units, nothing rounded")
    parser.add_argument("--strict", action="store_true", help="exit with 1 when a finding fails")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print the report."""
    result = Pipeline().run(read_project(arguments.file))
    if arguments.json:
        print_json(report_object(result))
    else:
        print_text(report_text(result))
    fails = any(finding.severity is Severity.FAIL for finding in result.findings)
    return FINDING_FAILS if arguments.strict and fails else 0
