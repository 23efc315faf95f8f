/* SPDX-License-Identifier: MIT */
/* A sheet as a tree of nodes that know their place, and the complaints made on the way. */
#ifndef SILLET_SHEET_TREE_H
#define SILLET_SHEET_TREE_H

#include <sillet/sheet.h>

#include "../text/text.h"

/* A file: its bytes while it is being read, and those of its lines that complaints show. */
typedef struct sheet_source {
    const char *name;
    char *held; /* to be freed when it is read */
    const char *bytes;
    size_t size;
    sil_unit units;      /* unit of its bare lengths */
    bool cut;            /* it could not be read to its end */
    size_t *line_starts; /* made at the first complaint */
    const char **lines;
    int line_count;
    int rank; /* 0: the sheet itself; from 1: the files under it, as they are read */
    struct sheet_node *named; /* where the file above names it; NULL for a sheet or a shop file */
    int errors, first_error;  /* errors in it so far, and the line of the first */
} sheet_source;

typedef enum sheet_shape { SHEET_SCALAR, SHEET_MAPPING, SHEET_SEQUENCE } sheet_shape;

/* Lines and columns from 1; columns in characters. */
typedef struct sheet_mark {
    int line, column;
} sheet_mark;

typedef struct sheet_node {
    sheet_shape shape;
    bool cut;   /* the file broke off within it */
    bool given; /* false: empty, ~ or null */
    char told;  /* 0, or 1 + the worst severity reported of its value */
    sheet_mark at, key_at;
    sheet_source *source;
    const char *key; /* key in a mapping; an item of a sequence has the key of the sequence */
    size_t key_length;
    const char *text; /* text of a scalar, NUL-terminated */
    size_t length;
    struct sheet_node *first, *last, *next;
    int count;
} sheet_node;

typedef struct sheet_told {
    sil_complaint complaint;
    const sheet_source *source;
    int order;
    struct sheet_told *next;
} sheet_told;

/* How many profiles may follow one another under a sheet, and how many files that makes with the
 * shop's. */
enum { SHEET_CHAIN_MAX = 4, SHEET_UNDER_MAX = SHEET_CHAIN_MAX + 1 };

/* A sheet and all that came out of it. */
struct sil_sheet {
    text_store store;   /* owns nodes, lists and texts */
    sil_reader *reader; /* the reader that keeps profiles, or NULL */
    sheet_source sheet;
    sheet_source under[SHEET_UNDER_MAX]; /* profiles, then the shop file */
    int under_count;
    sheet_told *first, *last;
    const sheet_told **sorted;
    int told_count;
    int errors;        /* with any error there is no job */
    bool profile_lost; /* a profile is named, and was not read to its end */
    bool on_disk;      /* the sheet is a file, and a shop file is sought above it */
    bool unreadable;   /* a file that may exist could not be read */
    bool confined;     /* a profile given as a path, and a shop file, must be plain files of
                          `folder` */
    int folder;
    sheet_node *root; /* the sheet with its profiles and shop file merged under it */
    sil_job job;
};

enum { SHEET_TOLD_MAX = 1000, SHEET_KEYS_MAX = 1000 };

/* sheet_take: so many zeroed bytes, aligned for anything. sheet_text: a copy of so many bytes,
 * NUL-terminated. Both belong to the sheet; NULL without memory. */
void *sheet_take(sil_sheet *sheet, size_t size);
char *sheet_text(sil_sheet *sheet, const char *words, size_t length);

/* sheet_tree_read: the nodes of a source, as far as it can be read.
 * Returned: the root, or NULL if there is none (reported) */
sheet_node *sheet_tree_read(sil_sheet *sheet, sheet_source *source);

/* sheet_bytes_check: reports bytes that are not allowed in a text, and cuts the source before their
 * line. */
void sheet_bytes_check(sil_sheet *sheet, sheet_source *source);

/* sheet_node_find: the value of a key of a mapping, or NULL. */
sheet_node *sheet_node_find(const sheet_node *mapping, const char *key, size_t length);

/* sheet_node_under: the same by a key that ends with NUL; NULL, too, under what is no mapping. */
sheet_node *sheet_node_under(const sheet_node *node, const char *key);

/* sheet_node_add: puts a child at the end of a collection. */
void sheet_node_add(sheet_node *up, sheet_node *child);

/* sheet_node_move: moves the value of a key to the end of another mapping, or of the same; nothing
 * if there is none. */
void sheet_node_move(sheet_node *from, const char *key, sheet_node *to);

/* sheet_tree_merge: merges the mapping of a file under a sheet's; its nodes are used up. */
void sheet_tree_merge(sheet_node *over, sheet_node *under);

/* sheet_tree_copy: a copy of a node with all that is in it, which belongs to the sheet; the texts
 * are shared. source: of the copy; NULL: as it was. NULL without memory. */
sheet_node *sheet_tree_copy(sil_sheet *sheet, const sheet_node *from, sheet_source *source);

/* Complaints. sheet_tell_value begins with the node's key and text, and marks the node as
 * reported. */
void sheet_tell_at(sil_sheet *sheet, sil_severity severity, sheet_source *source, sheet_mark mark,
                   const char *format, ...) __attribute__((format(printf, 5, 6)));
void sheet_tell_value(sil_sheet *sheet, sil_severity severity, sheet_node *node, const char *format,
                      ...) __attribute__((format(printf, 4, 5)));

/* The complaints so far, to go back to. */
typedef struct sheet_told_mark {
    sheet_told *last;
    int told_count, errors;
} sheet_told_mark;
sheet_told_mark sheet_told_so_far(const sil_sheet *sheet);
void sheet_told_take_back(sil_sheet *sheet, sheet_told_mark mark, sheet_source *source);

/* A text of a sheet as a complaint can quote it: one line, not long. */
typedef struct sheet_quote {
    char text[56];
} sheet_quote;
sheet_quote sheet_quote_of(const char *words, size_t length);

/* sheet_source_line: a line of a source, copied on demand; NULL past its end. */
const char *sheet_source_line(sil_sheet *sheet, sheet_source *source, int line);

/* sheet_nearness: how many letters two words differ by: inserted, lost, changed or swapped. */
int sheet_nearness(const char *word, size_t length, const char *known);

/* sheet_near: whether a word is a likely slip of a known one. */
bool sheet_near(int nearness, size_t length);

#endif
