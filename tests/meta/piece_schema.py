"""A law has a test: the schema of the piece file says of a file what the program says of it, as far as
a schema can tell. Usage: piece_schema.py PROGRAM SCHEMA ROOT"""
import glob
import json
import os
import re
import subprocess
import sys

import jsonschema
import yaml

# Files of tests/bad that a schema cannot tell from good ones, by the reason.
UNTOLD = {
    "it needs the whole file: a bare length is read under `units` alone": """
        length_bare_without_units units_missing""",
    "a rule over several keys": """
        alloy_missing bronze_missing wall_missing grade_missing neither_bronze_nor_armature no_parts
        nothing_holds_it mass_and_skin solid_and_wall load_at_and_along
        load_of_two_kinds stand_holds_nothing girth_under_depth segment_without_end height_missed
        scale_below_one scale_wanted_in_wrong_unit rack_without_shape
        attach_filling_welded attach_where_no_armature rust_denied_unsealed
        seam_default_and_place seam_partial_without_efficiency
        seam_unknown_with_efficiency seam_without_bronze seam_without_place
        base_anchors_in_nothing base_rod_beside_the_plate base_rods_in_one_spot
        base_rods_through_the_concrete base_test_in_concrete
        weighed_density_of_bronze weighed_neither_wax_nor_bronze
        weighed_wax_and_bronze weighed_whole_in_wax weighed_whole_no weighed_whole_too_light
        weighed_whole_lighter_than_its_parts weighed_heavier_than_solid weighed_by_the_limb
        weighed_nothing_named weighed_two_named weighed_part_of_a_panel
        armature_box_to_flat armature_of_two_kinds corner_of_an_oval numbers_under_scale
        numbers_with_surface through_another_limb through_backwards through_in_a_segment
        through_one_place through_unknown through_a_limb_further_down row_without_girth
        ground_missing ground_without_type hill_and_orography monument_without_detailing
        plate_without_area q_without_detailing soil_and_ground soil_out_of_order solid_and_open
        two_spectra_us above_the_roof detailing_without_reason
        held_about_w held_and_sprung held_in_nothing rests_and_held
        outline_of_two_kinds trace_corners_differ trace_to_round trace_to_rounded_box
        splice_of_no_kind splice_of_two_kinds splice_without_armature""",
    "a key belongs to one basis, or a word to one edition": """
        edition_of_other_basis exposure_under_eu terrain_missing ag_under_us hill_under_eu method_under_eu
        once_in_under_us sds_under_eu site_class_of_later_edition""",
    "a name that refers, that is used twice, or that the program keeps": """
        alloy_unknown filler_unknown pipe_unknown grade_unknown grade_of_other_form place_unknown place_by_a_part place_twice
        place_used_early lump_twice segment_name_twice segment_unknown load_named_as_built_in
        load_unknown terms_misspelt row_of_a_bare_point two_stands_on_one_arm hole_in_unknown_segment
        panel_of_one_twice panel_of_unknown_segment seam_between_strangers seam_default_twice
        alloy_by_its_title grade_by_its_title pipe_by_its_outside place_with_letters_swapped
        row_without_name segment_the_other_way_round
        weighed_panel_unknown seam_place_unknown seam_twice splice_where_nothing_meets hole_in_no_armature""",
    "where things are": """
        part_hangs_on_nothing places_coincide segment_without_length sole_without_area faces_nowhere
        trace_crosses trace_crosses_on_the_way trace_in_line trace_other_way_round trace_touches
        box_to_round bronze_at_one_end between_backwards""",
    "a bound of a value that bears a unit, or the order of several": """
        length_absurd spread_misses_value rust_takes_the_wall tube_wall_too_thick
        speed_beyond_any_map cold_that_warms gust_for_a_mean mean_for_a_gust speed_likely_a_gust speed_likely_of_service
        lump_of_too_great_mass material_of_too_great_density armature_box_too_thick corner_too_round numbers_impossible
        numbers_of_great_product hole_as_wide_as_the_tube weighed_less_than_tare
        panel_over_the_whole splice_bolts_outside splice_lug_hole_too_wide""",
    "a reason is due above some value": """
        code_without_reason drag_without_reason quality_without_reason rust_denied seam_better_than_the_table
        seam_none_without_reason""",
    "a file beside it": """
        trace_file_unreadable weighed_table_elsewhere weighed_table_not_there""",
    "a list of a form of its own": """
        base_rod_of_no_size panel_not_a_list splice_bolts_not_three splice_of_two_bolts""",
}


class Core(yaml.SafeLoader):
    """YAML 1.2: yes and no are words, a day is a word; a key twice is a fault, as in an editor."""

    yaml_implicit_resolvers = {}

    def construct_mapping(self, node, deep=False):
        keys = [key.value for key, _ in node.value]
        if len(set(keys)) < len(keys):
            raise ValueError("a key twice")
        return super().construct_mapping(node, deep)


for tag, expression, first in (
    ("null", "~|null|Null|NULL|", "~nN"),
    ("bool", "true|True|TRUE|false|False|FALSE", "tTfF"),
    ("int", "[-+]?[0-9]+", "-+0123456789"),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", "-+.0123456789"),
):
    Core.add_implicit_resolver("tag:yaml.org,2002:" + tag, re.compile(f"^(?:{expression})$"), list(first) + [""])


def load(text):
    """The tree, or an error where there is none."""
    return yaml.load(text, Loader=Core)  # noqa: S506: it makes plain values only


def read(path):
    with open(path, encoding="utf-8") as file:
        return file.read()


def fault_of(validator, text):
    """The first fault, None where the schema finds none."""
    try:
        tree = load(text)
    except (yaml.YAMLError, ValueError) as error:
        return "no YAML: " + str(error)[:80]
    for error in validator.iter_errors(tree):
        return f"{list(error.absolute_path)}: {error.message[:120]}"
    return None


def begun(program):
    """The piece files to begin with."""
    for what in ("figure", "bird", "pair"):
        for basis in ("eu", "us"):
            for units in ("mm", "in"):
                command = [program, "new", "--for", what, "--basis", basis, "--units", units]
                yield " ".join(command[1:]), subprocess.run(command, capture_output=True, text=True, check=True).stdout


def good(program, root):
    folders = ("examples", "tests/pieces", "tests/pieces/reference")
    for folder in folders:
        paths = sorted(glob.glob(os.path.join(root, folder, "*.yaml")))
        if not paths:
            sys.exit(f"no piece in {folder}")
        for path in paths:
            yield os.path.relpath(path, root), read(path)
    yield from begun(program)


def main(program, schema_file, root):
    schema = json.loads(read(schema_file))
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    faults, taken, refused = [], 0, 0
    for name, text in good(program, root):
        fault = fault_of(validator, text)
        taken += 1
        if fault:
            faults.append(f"{name} is refused: {fault}")
    untold = {name for names in UNTOLD.values() for name in names.split()}
    names = {os.path.basename(path)[: -len(".yaml")]: path for path in glob.glob(os.path.join(root, "tests/bad/*.yaml"))}
    for name, path in sorted(names.items()):
        fault = fault_of(validator, read(path))
        refused += fault is not None
        if fault is None and name not in untold:
            faults.append(f"{name} is taken; where no schema can tell it, list it here with the reason")
        if fault is not None and name in untold:
            faults.append(f"{name} is listed as untold, and refused: {fault}")
    faults += [f"{name} is listed and is no file" for name in sorted(untold - set(names))]
    if refused < 20:
        faults.append(f"only {refused} bad files are refused")
    print(f"{taken} good files are looked at, {refused} of {len(names)} bad ones are refused")
    sys.exit("\n".join(faults) if faults else 0)


main(sys.argv[1], sys.argv[2], sys.argv[3])
