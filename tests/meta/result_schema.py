"""A law has a test: what `tiptoe check --json` writes for every example keeps to the schema in docs/,
and the schema refuses what it must. A table beside a piece (*.csv) goes with it as --data.
Usage: result_schema.py PROGRAM SCHEMA PIECE..."""
import copy
import glob
import json
import os
import subprocess
import sys

import jsonschema


def no_constant(word):
    raise ValueError(word + " is no JSON number")


def result_of(program, piece):
    tables = glob.glob(os.path.join(os.path.dirname(piece), "*.csv"))
    data = ["--data", tables[0]] if tables else []
    run = subprocess.run([program, "check", "--quiet", "--json", "-", *data, piece], capture_output=True, check=False)
    if run.returncode not in (0, 1, 4):
        sys.exit(f"{piece}: exit status {run.returncode}: {run.stderr.decode()}")
    result = json.loads(run.stdout, parse_constant=no_constant)
    expected = {"holds": 0, "falls short": 1, "not checked": 4}[result["verdict"]]
    if run.returncode != expected:
        sys.exit(f"{piece}: verdict {result['verdict']}, exit status {run.returncode}")
    if (result["input"]["data"] is not None) != bool(tables):
        sys.exit(f"{piece}: own data {result['input']['data']}")
    return result


def spoilt(result):
    """Copies of a good result, each with one fault."""
    for key in result:
        bad = copy.copy(result)
        del bad[key]
        yield f"without {key}", bad
    faults = {
        "a verdict of another word": lambda r: r.update(verdict="fine"),
        "a use that is a text": lambda r: r["checks"][0].update(use="83 %"),
        "no use and yet it holds": lambda r: r["checks"][0].update(use=None, margin=None, holds=True, why="x"),
        "no use and no reason": lambda r: (r["checks"][0].update(use=None, holds=False), r["checks"][0].pop("why", 0)),
        "a force without its shear": lambda r: r["models"][0]["cases"][0]["forces"][0].pop("shear_y_N"),
        "x beyond the limb": lambda r: r["sections"][0].update(x=1.5),
        "own data without their rows": lambda r: r["input"].update(data={"file": "own.csv", "sha256": "0" * 64}),
        "no cautions": lambda r: r.update(cautions=[]),
        "a moment of two numbers": lambda r: r["models"][1]["cases"][0]["reactions"][0].update(moment_Nm=[0, 0]),
    }
    for fault, spoil in faults.items():
        bad = copy.deepcopy(result)
        spoil(bad)
        yield fault, bad


def main(program, schema_file, pieces):
    with open(schema_file, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    if not pieces:
        sys.exit("no piece to check")
    refused = 0
    for piece in pieces:
        result = result_of(program, piece)
        for error in validator.iter_errors(result):
            sys.exit(f"{piece}: {list(error.absolute_path)}: {error.message[:300]}")
    for fault, bad in spoilt(result):
        if validator.is_valid(bad):
            sys.exit(f"the schema takes a result {fault}")
        refused += 1
    print(f"{len(pieces)} results keep to the schema, {refused} spoilt ones are refused")


main(sys.argv[1], sys.argv[2], sys.argv[3:])
