/* basis/basis.c - the register of bases and the words for the levels of a combination. */
#include "basis/inside.h"

#include <string.h>

static const tt_basis *const bases[] = {
#define TT_BASIS(id) &tt_basis_##id,
#include "basis/bases.def"
#undef TT_BASIS
};

size_t tt_basis_count(void)
{
    return sizeof bases / sizeof bases[0];
}

const tt_basis *tt_basis_at(size_t i)
{
    return i < tt_basis_count() ? bases[i] : NULL;
}

const tt_basis *tt_basis_named(const char *id)
{
    for (size_t i = 0; id && i < tt_basis_count(); i++) {
        if (strcmp(bases[i]->id, id) == 0) return bases[i];
    }
    return NULL;
}

const char *tt_level_word(tt_level level)
{
    static const char *const words[TT_LEVELS] = {"strength", "allowable",  "equilibrium",
                                                 "service",  "accidental", "seismic"};
    return (unsigned)level < TT_LEVELS ? words[level] : "";
}

static tt_rule rule_of(const tt_rule_row *row)
{
    tt_rule rule = {.name = row->name, .level = row->level, .bare = row->bare};
    rule.weight = row->weight;
    rule.weight_restoring = row->restoring;
    rule.overturning_factor = row->overturning;
    rule.source = *tt_source_of(row->source);
    memcpy(rule.lead, row->lead, sizeof rule.lead);
    memcpy(rule.with, row->with, sizeof rule.with);
    memcpy(rule.permanent, row->permanent, sizeof rule.permanent);
    return rule;
}

size_t tt_rules_of(const tt_rule_row *rows, size_t n, tt_rule *rules, size_t most)
{
    if (n > most) n = most;
    for (size_t i = 0; i < n; i++) rules[i] = rule_of(&rows[i]);
    return n;
}
