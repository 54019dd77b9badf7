"""A law has a test: what `tiptoe weigh --json` writes keeps to its schema in docs/, adds up, and the schema
refuses what it must. Usage: weigh_schema.py PROGRAM SCHEMA PIECE..."""
import copy
import json
import subprocess
import sys

import jsonschema


def result_of(program, piece):
    run = subprocess.run([program, "weigh", "--quiet", "--json", "-", piece], capture_output=True, check=False)
    if run.returncode not in (0, 1):
        sys.exit(f"{piece}: exit status {run.returncode}: {run.stderr.decode()}")
    result = json.loads(run.stdout)
    limit, heavy = result["limit_kg"], result["forecast_kg"][1]
    if (limit is not None and heavy > limit) != (run.returncode == 1):
        sys.exit(f"{piece}: up to {heavy} kg, limit {limit} kg, exit status {run.returncode}")
    return result


def adds_up(piece, result):
    mass = result["mass"]
    besides = mass["armature_kg"] + mass["lumps_kg"]
    sums = {"parts": sum(p["bronze_kg"] for p in mass["parts"]), "ledger": sum(r["taken_kg"] for r in result["ledger"])}
    for name, bronze in sums.items():
        if abs(bronze + besides - mass["total_kg"]) > 1e-9 * mass["total_kg"]:
            sys.exit(f"{piece}: {name} make {bronze + besides} kg, the total is {mass['total_kg']} kg")


def main(program, schema_file, pieces):
    with open(schema_file, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    if not pieces:
        sys.exit("no piece to weigh")
    for piece in pieces:
        result = result_of(program, piece)
        for error in validator.iter_errors(result):
            sys.exit(f"{piece}: {list(error.absolute_path)}: {error.message[:300]}")
        adds_up(piece, result)
    refused = 0
    for key in result:
        bad = copy.copy(result)
        del bad[key]
        if validator.is_valid(bad):
            sys.exit(f"a result without {key} keeps to the schema")
        refused += 1
    bad = copy.deepcopy(result)
    bad["ledger"][0]["source"] = "guess"
    if validator.is_valid(bad):
        sys.exit("a source of another word keeps to the schema")
    print(f"{len(pieces)} pieces keep to it, {refused + 1} spoilt results do not")


main(sys.argv[1], sys.argv[2], sys.argv[3:])
