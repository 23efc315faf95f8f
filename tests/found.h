/* SPDX-License-Identifier: MIT */
/* Findings, withheld parts and steps: cases that start from a sound sheet and make one thing wrong. */
#ifndef SILLET_TESTS_FOUND_H
#define SILLET_TESTS_FOUND_H

#include <sillet/sillet.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../src/brief/brief.h"
#include "planned.h"

/* What a case may put in place of, each NULL for what a sound instrument has. */
typedef struct find_row {
    const char *code; /* the finding wanted, or NULL: none at all */
    const char *level;
    const char *withholds; /* "nut", "saddle", "both" or "" */
    const char *parts;     /* further parts of the sheet */
    const char *relief, *first, *action, *frets, *more;
    int string; /* the first that the finding names, from 1; 0 where the case does not say */
} find_row;

static inline const char *or_sound(const char *given, const char *sound)
{
    return given ? given : sound;
}

static inline sil_sheet *read_row(const find_row *row)
{
    static char bytes[4096];
    const char *parts = row->parts ? row->parts : "";
    bool own_instrument = strstr(parts, "instrument:") != NULL;
    int size = snprintf(bytes, sizeof bytes,
                        "sillet: 1\nprofile: steel-string-acoustic\n%s%s%s"
                        "readings:\n  - relief: %s\n    first: %s\n    action: %s\n    frets: %s\n"
                        "    %s\n",
                        own_instrument ? "" : "instrument: {crown: 1.1, rod: two-way}\n",
                        strstr(parts, "saddle:") ? "" : "saddle: {slot_depth: 5}\n", parts,
                        or_sound(row->relief, "0.2"),
                        or_sound(row->first, "[0.06, 0.06, 0.06, 0.07, 0.07, 0.08]"),
                        or_sound(row->action, "{treble: 1.75, bass: 2.25}"),
                        or_sound(row->frets, "sound"), or_sound(row->more, "temperature: 20 C"));
    sil_sheet *sheet = NULL;
    sil_sheet_read_bytes(bytes, (size_t)size, row->code ? row->code : "sound", "profiles", &sheet);
    for (int k = 0; !sil_sheet_job(sheet) && k < sil_sheet_complaint_count(sheet); k++) {
        print_error("%s: %s\n", row->code, sil_sheet_complaint(sheet, k).text);
    }
    return sheet;
}

static inline const sil_finding *find_code(const sil_plan *plan, const find_row *row)
{
    for (int k = 0; k < plan->finding_count; k++) {
        if (strcmp(sil_code_word(plan->findings[k].code), row->code) == 0 &&
            strcmp(sil_level_word(plan->findings[k].level), row->level) == 0) {
            return &plan->findings[k];
        }
    }
    return NULL;
}

/* Every text of a plan can be told, ends where it should and speaks no word of scripts. */
static inline void tell_everything(const sil_plan *plan)
{
    brief *b = brief_make(plan, SIL_INCH);
    int told = 0;
    assert_non_null(b);
    for (int k = 0; k < plan->finding_count; k++) {
        const char *words = b->findings[k].alone.words;
        assert_true(strlen(words) > 10 && words[strlen(words) - 1] == '.');
        assert_null(strstr(words, "held3"));
    }
    while (told < plan->finding_count) {
        assert_true(b->findings[told].alike > 0 && strlen(b->findings[told].together.words) > 10);
        told += b->findings[told].alike;
    }
    assert_int_equal(told, plan->finding_count);
    for (int k = 0; k < plan->step_count; k++) {
        assert_true(strlen(b->steps[k].what.words) > 10);
        assert_true(strlen(b->steps[k].check.words) > 10);
    }
    brief_free(b);
}

/* Each fault raises its finding, and no more is withheld. */
static inline void expect_findings(const find_row *rows, size_t count)
{
    static sil_plan plan;
    for (size_t k = 0; k < count; k++) {
        const find_row *row = &rows[k];
        sil_sheet *sheet = read_row(row);
        assert_non_null(sil_sheet_job(sheet));
        plan_into(sil_sheet_job(sheet), &plan);
        for (int f = 0; !row->code && f < plan.finding_count; f++) {
            assert_int_equal(plan.findings[f].level, SIL_LEVEL_FINE); /* an instrument in order */
        }
        if (row->code && !find_code(&plan, row)) {
            print_error("%s (%s) was not found\n", row->code, row->level);
            fail();
        }
        if (row->string > 0 && find_code(&plan, row)->string != row->string - 1) {
            print_error("%s names string %d\n", row->code, find_code(&plan, row)->string + 1);
            fail();
        }
        for (int f = 0; f < plan.finding_count; f++) { /* over which fret the relief was read */
            const sil_finding *found = &plan.findings[f];
            bool read_there = found->stage == SIL_ROD && found->string < 0 &&
                              (found->code == SIL_AT_EDGE || found->code == SIL_RELIEF_FIRST);
            assert_true(!read_there || found->fret == plan.bench.relief.over);
        }
        bool both = strcmp(row->withholds, "both") == 0;
        bool nut = both || strcmp(row->withholds, "nut") == 0;
        bool saddle = both || strcmp(row->withholds, "saddle") == 0;
        if ((plan.nut_withheld.count > 0) != nut || (plan.saddle_withheld.count > 0) != saddle) {
            print_error("%s: withholds otherwise than %s\n", row->code, row->withholds);
            fail();
        }
        tell_everything(&plan);
        sil_sheet_free(sheet);
    }
}

/* Where a part waits no figure is left that one could cut to. */
static inline void expect_nothing_to_cut_to(const find_row *rows, size_t count)
{
    static sil_plan plan;
    for (size_t k = 0; k < count; k++) {
        sil_sheet *sheet = read_row(&rows[k]);
        plan_into(sil_sheet_job(sheet), &plan);
        for (int i = 0; i < 6; i++) {
            if (plan.nut_withheld.count > 0) {
                assert_int_equal(plan.nut.verdict[i], SIL_WAIT);
                assert_false(sil_known(plan.nut.first_pass[i]) || sil_known(plan.nut.stack[i]) ||
                             sil_known(plan.nut.floor[i]) || sil_known(plan.nut.shim));
            }
            if (plan.saddle_withheld.count > 0) {
                assert_int_equal(plan.saddle.verdict[i], SIL_WAIT);
                assert_false(sil_known(plan.saddle.first_pass[i]) || plan.saddle.bottom ||
                             sil_known(plan.saddle.dress[i]) || sil_known(plan.saddle.shim));
            }
        }
        for (int s = 0; s < plan.step_count; s++) {
            assert_false(plan.nut_withheld.count > 0 && plan.steps[s].stage == SIL_NUT);
            assert_false(plan.saddle_withheld.count > 0 && plan.steps[s].stage == SIL_SADDLE &&
                         plan.steps[s].act != SIL_ACT_NECK_ANGLE &&
                         plan.steps[s].act != SIL_ACT_CHECK);
        }
        sil_sheet_free(sheet);
    }
}

#endif
