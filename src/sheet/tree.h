/* SPDX-License-Identifier: MIT */
/* A sheet as a tree of nodes that know where they stand, and what was complained of on the way. */
#ifndef SILLET_SHEET_TREE_H
#define SILLET_SHEET_TREE_H

#include <sillet/sheet.h>

#include "arena.h"

/* A file read: its bytes while it is being read, and its lines as far as complaints need them. */
typedef struct sil_source {
    const char *name;
    char *held; /* to be freed when it is read */
    const char *bytes;
    size_t size;
    sil_unit units;      /* of its bare lengths */
    bool cut;            /* it could not be read to its end */
    size_t *line_starts; /* laid at the first complaint */
    const char **lines;
    int line_count;
} sil_source;

typedef enum sil_shape { SIL_SCALAR, SIL_MAPPING, SIL_SEQUENCE } sil_shape;

/* Lines and columns from 1; columns in characters. */
typedef struct sil_mark {
    int line, column;
} sil_mark;

typedef struct sil_node {
    sil_shape shape;
    bool cut;   /* the file broke off within it */
    bool given; /* false: empty, ~ or null */
    char told;  /* 0, or 1 + the gravest severity told of its value */
    sil_mark at, key_at;
    sil_source *source;
    const char *key; /* in a mapping; an item of a sequence bears the sequence's */
    size_t key_length;
    const char *text; /* of a scalar, NUL-terminated */
    size_t length;
    struct sil_node *first, *last, *next;
    int count;
} sil_node;

typedef struct sil_told {
    sil_complaint complaint;
    bool in_profile;
    int order;
    struct sil_told *next;
} sil_told;

/* A sheet and all that came out of it. */
struct sil_sheet {
    sil_arena arena;
    sil_reader *reader; /* that keeps profiles; or NULL */
    sil_source sheet, profile;
    sil_told *first, *last;
    const sil_told **sorted;
    int told_count;
    int errors;        /* any at all: there is no job */
    bool profile_lost; /* named, and not read to its end */
    bool unreadable;   /* a file that may be there could not be read */
    bool confined;     /* a profile given as a path must be a plain file of `folder` */
    int folder;
    sil_node *root; /* the sheet, its profile laid under it */
    sil_job job;
};

enum { SIL_TOLD_MAX = 1000, SIL_KEYS_MAX = 1000 };

/* sil_tree_read: the nodes of a source, as far as it can be read.
 * Returned: the root, or NULL where there is none (told)
 */
sil_node *sil_tree_read(sil_sheet *sheet, sil_source *source);

/* sil_bytes_check: tells of bytes that no text holds, and cuts the source before their line. */
void sil_bytes_check(sil_sheet *sheet, sil_source *source);

/* sil_node_find: the value of a key of a mapping, or NULL. */
sil_node *sil_node_find(const sil_node *mapping, const char *key, size_t length);

/* sil_node_add: puts a child at the end of a collection. */
void sil_node_add(sil_node *up, sil_node *child);

/* sil_tree_merge: lays a profile's mapping under a sheet's. */
void sil_tree_merge(sil_node *over, sil_node *under);

/* Complaints. sil_tell_value begins with the node's key and text, and marks it as told. */
void sil_tell_at(sil_sheet *sheet, sil_severity severity, sil_source *source, sil_mark mark,
                 const char *format, ...) __attribute__((format(printf, 5, 6)));
void sil_tell_value(sil_sheet *sheet, sil_severity severity, sil_node *node, const char *format,
                    ...) __attribute__((format(printf, 4, 5)));

/* A text of a sheet as it can stand within a complaint: one line, not long. */
typedef struct sil_quote {
    char text[56];
} sil_quote;
sil_quote sil_quote_of(const char *text, size_t length);

/* sil_source_line: a line of a source, made on demand; NULL past its end. */
const char *sil_source_line(sil_sheet *sheet, sil_source *source, int line);

/* sil_nearness: how many letters two words differ by: inserted, lost, changed or swapped. */
int sil_nearness(const char *word, size_t length, const char *known);

/* sil_near: whether a word is a likely slip of a known one. */
bool sil_near(int nearness, size_t length);

#endif
