/* SPDX-License-Identifier: MIT */
/* Within the brief: what the lists of the owner's page share. */
#ifndef SILLET_BRIEF_OWNER_PARTS_H
#define SILLET_BRIEF_OWNER_PARTS_H

#include "owner.h"
#include "tell.h"

/* When a stage is worked: before the last visit, or by today's plan. */
typedef enum owner_when { OWNER_NEVER, OWNER_BEFORE, OWNER_TODAY } owner_when;
owner_when owner_worked(const brief *b, sil_stage_name stage);

/* owner_has:   whether a finding has this code.
 * owner_tunes: whether something is done today so that it plays in tune up the neck. */
bool owner_has(const brief *b, sil_code code);
bool owner_tunes(const brief *b);

/* owner_add, owner_add_words: end a sentence and put it into a list; a list that is full stays. */
void owner_add(brief_owner_list *list, telling *t);
void owner_add_words(brief *b, brief_owner_list *list, const char *words);

/* owner_found: puts what was found, and what is to be done about what stops the work. */
void owner_found(brief *b, brief_owner_list *found, brief_owner_list *next);

#endif
