"""`sheet`: a fitted evening on one sheet of paper, as a PDF file; must not know how it is set."""

from argparse import ArgumentParser, Namespace

from conewright.cli.command import Command
from conewright.cli.draw import add_tradition, tradition_of
from conewright.cli.files import check_output, write
from conewright.cli.fit import finding, verdict
from conewright.cli.tonight import add_tonight, at, fitted, starts_of, tonight_of
from conewright.cli.wrong import MEND
from conewright.model.problem import Severity

TITLE = "Tonight"


def _add_words(parser: ArgumentParser) -> None:
    add_tonight(parser)
    parser.add_argument("-o", metavar="OUT.pdf", dest="out", required=True, help="the sheet to write")
    add_tradition(parser)


def _run(words: Namespace) -> int:
    tonight, starts = tonight_of(words), starts_of(words)
    tradition, path = tradition_of(words), check_output(words.out)
    session = fitted(tonight)
    for problem in session.problems:
        if problem.severity is not Severity.KNOW:
            print(finding(problem))
    if not session.blocks:
        return MEND
    from conewright.store.paper import sheet_findings, sheet_pdf

    when = f"{at(starts, 0)} to {at(starts, tonight.minutes)}"
    write(path, sheet_pdf(session, title=TITLE, when=when, tradition=tradition))
    for problem in sheet_findings(session, title=TITLE, when=when):
        print(finding(problem))
    print(f"{path}: {len(session.blocks)} blocks, {when}.")
    return verdict(session)


SHEET = Command(
    name="sheet",
    does="fit an evening and print it on one sheet as a PDF file",
    example="conewright sheet --here 13 --minutes 70 --space 30x22 -o tonight.pdf",
    add_words=_add_words,
    run=_run,
)
