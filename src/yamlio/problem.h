/* yamlio/problem.h - the parser's own complaint as a diagnostic. Used inside this module only. */
#ifndef TT_YAMLIO_PROBLEM_H
#define TT_YAMLIO_PROBLEM_H

#include "base/diags.h"

#include <yaml.h>

/** Tells diags what the parser stopped at. */
void tt_problem_tell(const yaml_parser_t *parser, const char *text, size_t length, tt_diags *diags);

#endif
