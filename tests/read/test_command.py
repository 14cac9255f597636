"""``hookside read`` as a maker runs it: a process of its own."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfWriter

from tracker.pattern.load import load_pattern

from .texts import NEWT

ROOT = Path(__file__).parent.parent.parent
MAT = "Cup mat\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
MAT_TOML = """\
title = "Cup mat"
terms = "US"

[[part]]
name = "Main part"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
'''
"""
MAT_TABLE = """\
Cup mat

Main part
  Rnd 1  agrees      → 6   printed 6
  Rnd 2  agrees    6 → 12  printed 12

All well: 2 agree.

"""
DAMAGED = (
    "a damaged PDF, or of a kind that cannot be read. "
    "Open it in a viewer and copy its words to a .txt file."
)
EMPTY = "a PDF without any words. Its pages may be pictures: type the rounds into a .txt file."


def hookside(*words, given=b""):
    done = subprocess.run(
        [sys.executable, "-m", "tracker", *map(str, words)],
        cwd=ROOT,
        input=given,
        capture_output=True,
        timeout=60,
        check=False,
    )
    return done.returncode, done.stdout.decode(), done.stderr.decode()


@pytest.fixture
def mat(tmp_path):
    path = tmp_path / "cup-mat.txt"
    path.write_text(MAT, encoding="utf-8")
    return path


def pdf(*pages):
    """A small PDF, each page a list of lines."""
    objects = [
        b"<</Type/Catalog/Pages 2 0 R>>",
        b"",
        b"<</Type/Font/Subtype/Type1/BaseFont/Courier>>",
    ]
    kids = []
    for lines in pages:
        shown = "".join(f"({line}) Tj T* " for line in map(escaped, lines))
        stream = f"BT /F1 9 Tf 14 TL 40 700 Td {shown}ET".encode("latin-1")
        objects.append(b"<</Length %d>>\nstream\n%s\nendstream" % (len(stream), stream))
        objects.append(
            b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 595 842]/Contents %d 0 R"
            b"/Resources<</Font<</F1 3 0 R>>>>>>" % len(objects)
        )
        kids.append(len(objects))
    listed = b" ".join(b"%d 0 R" % kid for kid in kids)
    objects[1] = b"<</Type/Pages/Count %d/Kids[%s]>>" % (len(kids), listed)
    return assembled(objects)


def escaped(line):
    return line.replace("\\", r"\\").replace("(", r"\(").replace(")", r"\)")


def assembled(objects):
    found, starts = b"%PDF-1.4\n", []
    for number, body in enumerate(objects, start=1):
        starts.append(len(found))
        found += b"%d 0 obj\n%s\nendobj\n" % (number, body)
    table = b"".join(b"%010d 00000 n \n" % start for start in starts)
    size = len(objects) + 1
    found_at = len(found)
    found += b"xref\n0 %d\n0000000000 65535 f \n%s" % (size, table)
    return found + b"trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF" % (size, found_at)


def test_the_draft_goes_out_and_the_table_beside_it(mat):
    assert hookside("read", mat) == (0, MAT_TOML, MAT_TABLE)


def test_what_is_piped_in_is_read(mat):
    status, out, _ = hookside("read", "-", given=MAT.encode())
    assert (status, out) == (0, MAT_TOML)


def test_the_draft_is_a_pattern_file_that_checks_the_same(tmp_path):
    text, toml = tmp_path / "newt.txt", tmp_path / "newt.toml"
    text.write_text(NEWT, encoding="utf-8")
    assert hookside("read", text, "-o", toml)[:2] == (0, "")
    assert load_pattern(toml).title == "Pocket Newt"
    from_toml, from_text = hookside("check", toml), hookside("check", text)
    assert from_toml == from_text
    assert from_toml[1].endswith("All well: 14 agree.\n\n")


def test_a_round_that_differs_is_named_by_its_line_in_the_text(mat):
    mat.write_text(MAT.replace("(12)", "(13)"), encoding="utf-8")
    status, _, err = hookside("read", mat)
    assert status == 1
    assert "cup-mat.txt, line 4, column" in err
    assert hookside("check", mat)[0] == 1


def test_json_for_scripts(mat):
    mat.write_text(MAT.replace("sc", "dc"), encoding="utf-8")
    status, out, err = hookside("read", mat, "--json")
    found = json.loads(out)
    assert (status, err) == (0, "")
    assert found["toml"] == MAT_TOML.replace("sc", "dc")
    assert (found["title"], found["terms"], found["well"]) == ("Cup mat", "US", True)
    assert found["notes"] == [
        "nothing says whether its terms are US or UK, and the words fit both: taken as US"
    ]
    assert [
        (r["line"], r["label"], r["verdict"], r["below"], r["makes"], r["stated"])
        for r in found["parts"][0]["rounds"]
    ] == [(3, "Rnd 1", "agrees", None, [6], [6]), (4, "Rnd 2", "agrees", [6], [12], [12])]


def test_nothing_is_written_over_unless_asked(mat, tmp_path):
    there = tmp_path / "there.toml"
    there.write_text("mine", encoding="utf-8")
    status, out, err = hookside("read", mat, "-o", there)
    said = f"hookside: {there} is there already: give another name, or --force to replace it\n"
    assert (status, out, err) == (2, "", said)
    assert there.read_text(encoding="utf-8") == "mine"
    assert hookside("read", mat, "-o", there, "--force")[0] == 0
    assert there.read_text(encoding="utf-8") == MAT_TOML
    assert sorted(path.name for path in tmp_path.iterdir()) == ["cup-mat.txt", "there.toml"]


def test_a_link_is_not_written_through(mat, tmp_path):
    link = tmp_path / "link.toml"
    link.symlink_to(mat)
    status, _, err = hookside("read", mat, "-o", link, "--force")
    assert (status, err) == (2, f"hookside: {link} is no plain file, so it is not replaced\n")
    assert mat.read_text(encoding="utf-8") == MAT


def test_a_folder_that_is_not_there(mat, tmp_path):
    status, _, err = hookside("read", mat, "-o", tmp_path / "none" / "x.toml")
    assert status == 2
    assert err.endswith("x.toml cannot be written: no such file or directory\n")


def test_what_stands_on_every_page_of_a_pdf_is_left_out(tmp_path):
    lines = MAT.splitlines()
    foot = ["A maker of mats - 1", "https://example.org/mat 1/4"]
    path = tmp_path / "mat.pdf"
    again = ["Rnd 3: sc in each st around. (12)", "Rnd 4: sc in each st around. (12)"]
    path.write_bytes(
        pdf(
            ["Cup mat", "", lines[2], *foot],
            ["Cup mat", lines[3], *foot],
            ["Cup mat", again[0], *foot],
            ["Cup mat", again[1], *foot],
        )
    )
    status, out, _ = hookside("read", path)
    assert status == 0
    assert out == MAT_TOML.replace("(12)\n", "\n".join(["(12)", *again, ""]))


def test_what_a_sentence_leads_to_is_no_round(tmp_path):
    path = tmp_path / "mat.txt"
    words = "Making up\nPin the border to the mat and sew it on between\nRnds 1 and 2. Press to\n"
    path.write_text(MAT + words + "Rnd 2 size.\n", encoding="utf-8")
    status, out, _ = hookside("read", path)
    assert status == 0
    assert "between Rnds 1 and 2." in out
    assert "Press to Rnd 2 size." in out


def test_a_pdf_of_two_pages(tmp_path):
    path = tmp_path / "mat.pdf"
    path.write_bytes(pdf(MAT.splitlines()[:3], MAT.splitlines()[3:]))
    status, out, _ = hookside("read", path)
    assert (status, out) == (0, MAT_TOML)


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        (
            "a.txt",
            b"",
            'a.txt: no round was found in it. A round begins like "Rnd 1:" or "Row 1:".',
        ),
        ("a.txt", b"x" * (10 << 20), "a.txt: too large for a pattern. The most is 1 MiB."),
        ("a.pdf", b"x" * (21 << 20), "a.pdf: too large for a pattern. The most is 20 MiB."),
        ("a.txt", MAT.encode("utf-16"), "a.txt: text in UTF-16. Save the file as UTF-8."),
        ("a.txt", b"\x00\x01\x02", "a.txt: not text. Give a text, Markdown or PDF file."),
        (
            "a.txt",
            b"PK\x03\x04",
            "a.txt: a zip or word processor file, not text. Save its words as plain text (.txt).",
        ),
        (
            "a.txt",
            b"Mat\nRnd \xff",
            "a.txt: line 2, column 5: not text in UTF-8\n    Save the file as UTF-8.",
        ),
        (
            "a.pdf",
            b"%PDF-1.7\nnonsense",
            f"a.pdf: {DAMAGED}",
        ),
        (
            "a.pdf",
            pdf([]),
            f"a.pdf: {EMPTY}",
        ),
        ("a.pdf", pdf(*[["x"]] * 201), "a.pdf: a PDF of 201 pages. The most is 200."),
    ],
    ids=lambda value: value[:12] if isinstance(value, str) else "",
)
def test_bad_input_is_one_clear_message(tmp_path, name, data, said):
    path = tmp_path / name
    path.write_bytes(data)
    assert hookside("read", path) == (2, "", f"hookside: {tmp_path}/{said}\n")


@pytest.mark.parametrize("cut", range(20, 700, 97))
def test_a_pdf_cut_off_anywhere_is_no_traceback(tmp_path, cut):
    path = tmp_path / "mat.pdf"
    path.write_bytes(pdf(MAT.splitlines())[:-cut])
    status, _, err = hookside("read", path)
    assert status in (0, 2)
    assert "Traceback" not in err
    assert "went wrong" not in err


def test_a_locked_pdf(tmp_path):
    path = tmp_path / "mat.pdf"
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.encrypt("secret", algorithm="RC4-128")
    writer.write(path)
    status, out, err = hookside("read", path)
    assert (status, out) == (2, "")
    hint = "Save a copy without a password, or copy its words to a .txt file."
    assert err == f"hookside: {path}: a PDF locked with a password. {hint}\n"


@pytest.mark.parametrize(
    ("file", "said"),
    [
        ("none.txt", "none.txt: no such file. Look at its name and folder."),
        (".", "is a folder, not a file. Name the pattern file in it."),
    ],
)
def test_no_file(tmp_path, file, said):
    status, out, err = hookside("read", tmp_path / file)
    assert (status, out) == (2, "")
    assert err.endswith(f"{said}\n")


def test_a_pdf_without_its_reader_says_what_to_install(tmp_path):
    path = tmp_path / "mat.pdf"
    path.write_bytes(pdf(MAT.splitlines()))
    script = (
        "import sys; sys.modules['pypdf'] = None\n"
        f"from tracker.cli import main; sys.exit(main(['read', {str(path)!r}]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=False
    )
    said = "a PDF, and pypdf, which reads those, is not installed"
    hint = 'Install it with: pip install "hookside[pdf]"'
    assert (done.returncode, done.stderr) == (2, f"hookside: {path}: {said}. {hint}\n")
