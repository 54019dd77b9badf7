/* base/numbers.c - what each permanent number means and how it is cured. */
#include "base/diags.h"

#include <stddef.h>

typedef struct {
    unsigned number;
    const char *title, *cure;
} entry;

static const entry entries[] = {
#define TT_NUMBER(number, name, title, cure) {number, title, cure},
#include "base/numbers.def"
#undef TT_NUMBER
};

static const entry *find(unsigned number)
{
    for (size_t i = 0; i < sizeof entries / sizeof *entries; i++) {
        if (entries[i].number == number) return &entries[i];
    }
    return NULL;
}

const char *tt_number_title(unsigned number)
{
    const entry *found = find(number);
    return found ? found->title : NULL;
}

const char *tt_number_cure(unsigned number)
{
    const entry *found = find(number);
    return found ? found->cure : NULL;
}
