/* Trees: texts, places in characters, quotes, aliases as copies, finding and putting. */
#include "assert_close.h"
#include "yamlio/tree.h"

#include <string.h>

typedef struct {
    tt_pool pool;
    tt_diags *diags;
    tt_node *root;
} reading;

static reading read_text(const char *text)
{
    reading r = {.diags = tt_diags_new(0)};
    assert_non_null(r.diags);
    tt_diags_about(r.diags, "heron.yaml", text, strlen(text));
    const tt_status status = tt_tree_read(text, strlen(text), &r.pool, r.diags, &r.root);
    for (size_t i = 0; i < tt_diags_count(r.diags); i++) {
        print_error("%u: %s\n", tt_diags_at(r.diags, i)->number, tt_diags_at(r.diags, i)->text);
    }
    assert_int_equal(status, TT_OK);
    assert_non_null(r.root);
    return r;
}

static void done(reading *r)
{
    tt_diags_free(r->diags);
    tt_pool_clear(&r->pool);
}

static void assert_place(tt_place place, unsigned line, unsigned column, unsigned width)
{
    assert_int_equal(place.line, line);
    assert_int_equal(place.column, column);
    assert_int_equal(place.width, width);
}

static void texts_and_places(void **state)
{
    (void)state;
    reading r = read_text("piece: Heron at the Weir\n"
                          "bronze: {alloy: C87300, wall: 5 mm}\n"
                          "limbs:\n"
                          "  left leg:\n"
                          "    - [toe, -15, 0]\n"
                          "note: \"a: b\"   # remark\n"
                          "empty:\n"
                          "no: 'off'\n");
    assert_int_equal(r.root->kind, TT_MAPPING);
    assert_int_equal(r.root->n, 6);
    assert_null(r.root->key);
    assert_null(r.root->text);
    const tt_node *piece = r.root->child[0];
    assert_string_equal(piece->key, "piece");
    assert_string_equal(piece->text, "Heron at the Weir");
    assert_place(piece->key_place, 1, 1, 5);
    assert_place(piece->place, 1, 8, 17);
    const tt_node *wall = tt_tree_find(tt_tree_find(r.root, "bronze"), "wall");
    assert_string_equal(wall->text, "5 mm");
    assert_place(wall->key_place, 2, 25, 4);
    assert_place(wall->place, 2, 31, 4);
    const tt_node *leg = tt_tree_find(tt_tree_find(r.root, "limbs"), "left leg");
    assert_int_equal(leg->kind, TT_SEQUENCE);
    assert_place(leg->key_place, 4, 3, 8);
    assert_place(leg->place, 5, 5, 1);
    assert_int_equal(leg->child[0]->n, 3);
    assert_string_equal(leg->child[0]->child[1]->text, "-15");
    assert_place(leg->child[0]->child[1]->place, 5, 13, 3);
    assert_null(leg->child[0]->child[1]->key);
    const tt_node *note = tt_tree_find(r.root, "note");
    assert_string_equal(note->text, "a: b");
    assert_true(note->quoted);
    assert_place(note->place, 6, 7, 6);
    assert_string_equal(tt_tree_find(r.root, "empty")->text, "");
    assert_false(tt_tree_find(r.root, "empty")->quoted);
    assert_string_equal(tt_tree_find(r.root, "no")->text, "off");
    assert_true(tt_tree_find(r.root, "no")->quoted);
    done(&r);
}

/* Columns count characters, not bytes; a byte order mark counts for nothing; lines may end in CR
 * LF. */
static void columns_are_characters(void **state)
{
    (void)state;
    reading r = read_text("\xEF\xBB\xBFg\xC3\xBC\xC3\xB6: \xE2\x82\xAC\xF0\x9F\x90\xA6 5\r\nnext: "
                          "{\xC3\xA4: 1, b: 2}\r\n");
    assert_string_equal(r.root->child[0]->key, "g\xC3\xBC\xC3\xB6");
    assert_place(r.root->child[0]->key_place, 1, 1, 3);
    assert_place(r.root->child[0]->place, 1, 6, 4);
    assert_place(r.root->child[1]->child[1]->key_place, 2, 14, 1);
    assert_place(r.root->child[1]->child[1]->place, 2, 17, 1);
    done(&r);
}

static void long_texts(void **state)
{
    (void)state;
    reading r = read_text("a: >-\n  one\n  two\nb: |\n  x\n  y\nc: one\n  two\nd: \"x\\ty\\n\"\n");
    assert_string_equal(tt_tree_find(r.root, "a")->text, "one two");
    assert_place(tt_tree_find(r.root, "a")->place, 1, 4, 1);
    assert_string_equal(tt_tree_find(r.root, "b")->text, "x\ny\n");
    assert_string_equal(tt_tree_find(r.root, "c")->text, "one two");
    assert_place(tt_tree_find(r.root, "c")->place, 7, 4, 1);
    assert_string_equal(tt_tree_find(r.root, "d")->text, "x\ty\n");
    done(&r);
}

static void roots_of_any_kind(void **state)
{
    (void)state;
    reading r = read_text("--- [1, [], {}]\n...\n");
    assert_int_equal(r.root->kind, TT_SEQUENCE);
    assert_int_equal(r.root->n, 3);
    assert_int_equal(r.root->child[1]->n, 0);
    assert_int_equal(r.root->child[2]->kind, TT_MAPPING);
    assert_null(tt_tree_find(r.root, "a"));
    assert_null(tt_tree_find(r.root->child[2], "a"));
    assert_null(tt_tree_find(NULL, "a"));
    done(&r);
    r = read_text("heron");
    assert_int_equal(r.root->kind, TT_SCALAR);
    done(&r);
}

/* `&x` in front does not move the place of the text; !!str and ! say nothing new. */
static void properties_are_skipped(void **state)
{
    (void)state;
    reading r = read_text("a: &x 5 mm\nb: !!str 12\nc: ! 'q'\nd: [&y 1, *x]\n");
    assert_place(tt_tree_find(r.root, "a")->place, 1, 7, 4);
    assert_place(tt_tree_find(r.root, "b")->place, 2, 10, 2);
    assert_place(tt_tree_find(r.root, "c")->place, 3, 6, 3);
    assert_place(tt_tree_find(r.root, "d")->child[0]->place, 4, 8, 1);
    assert_string_equal(tt_tree_find(r.root, "d")->child[1]->text, "5 mm");
    done(&r);
}

static void aliases_are_copies(void **state)
{
    (void)state;
    reading r = read_text("left: &leg {wall: {is: 5}, rows: [1, 2]}\nright: *leg\n");
    tt_node *left = tt_tree_find(r.root, "left"), *right = tt_tree_find(r.root, "right");
    assert_place(right->key_place, 2, 1, 5);
    assert_place(right->place, 1, 7, 1); /* where the value is written */
    assert_string_equal(tt_tree_find(tt_tree_find(right, "wall"), "is")->text, "5");
    assert_string_equal(tt_tree_find(right, "rows")->child[1]->text, "2");
    tt_node six = {.key = "is", .text = "6", .kind = TT_SCALAR};
    assert_true(tt_tree_put(tt_tree_find(right, "wall"), &r.pool, &six));
    assert_string_equal(tt_tree_find(tt_tree_find(right, "wall"), "is")->text, "6");
    assert_string_equal(tt_tree_find(tt_tree_find(left, "wall"), "is")->text, "5");
    done(&r);
}

static void adds_and_replaces(void **state)
{
    (void)state;
    reading r = read_text("a: 1\nlist: [x]\nempty: {}\n");
    tt_node one = {.key = "a", .text = "2", .kind = TT_SCALAR};
    tt_node new = {.key = "b", .text = "3", .kind = TT_SCALAR};
    tt_node entry = {.text = "y", .kind = TT_SCALAR};
    assert_true(tt_tree_put(r.root, &r.pool, &one));
    assert_int_equal(r.root->n, 3);
    assert_ptr_equal(r.root->child[0], &one);
    assert_true(tt_tree_put(r.root, &r.pool, &new));
    assert_int_equal(r.root->n, 4);
    assert_ptr_equal(tt_tree_find(r.root, "b"), &new);
    tt_node *list = tt_tree_find(r.root, "list"), *empty = tt_tree_find(r.root, "empty");
    assert_true(tt_tree_put(list, &r.pool, &entry));
    assert_int_equal(list->n, 2);
    assert_string_equal(list->child[0]->text, "x");
    assert_string_equal(list->child[1]->text, "y");
    assert_true(tt_tree_put(empty, &r.pool, &one));
    assert_ptr_equal(tt_tree_find(empty, "a"), &one);
    done(&r);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(texts_and_places),
        cmocka_unit_test(columns_are_characters),
        cmocka_unit_test(long_texts),
        cmocka_unit_test(roots_of_any_kind),
        cmocka_unit_test(properties_are_skipped),
        cmocka_unit_test(aliases_are_copies),
        cmocka_unit_test(adds_and_replaces),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
