/* SPDX-License-Identifier: MIT */
/* Feeds random bytes to the sheet reader (clang -fsanitize=fuzzer). If they give a job, the plan and
 * the result are made too. Profiles are those of $SILLET_PROFILES, otherwise those in the folder it
 * is run in. */
#include <stdint.h>
#include <stdlib.h>

#include <sillet/sillet.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

/* Every complaint must be shown whole in the length it says it needs. */
static void show_complaints(const sil_sheet *sheet)
{
    for (int k = 0; k < sil_sheet_complaint_count(sheet) && k < 20; k++) {
        char shown[4096];
        sil_complaint complaint = sil_sheet_complaint(sheet, k);
        if (sil_complaint_write(&complaint, shown, sizeof shown) >= sizeof shown) {
            abort();
        }
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    sil_sheet *sheet;
    setenv("SILLET_PROFILES", "profiles", 0);
    sil_status status = sil_sheet_read_bytes((const char *)bytes, size, "sheet", NULL, &sheet);
    const sil_job *job = sil_sheet_job(sheet);
    if ((job != NULL) != (status >= SIL_DONE)) {
        abort();
    }
    show_complaints(sheet);
    if (job) {
        sil_plan *plan;
        if (sil_plan_make(job, &plan) != SIL_DONE) {
            abort();
        }
        free(sil_report_json(plan, SIL_MM));
        free(sil_report_text(plan, job->units, "sheet"));
        sil_plan_free(plan);
    }
    sil_sheet_free(sheet);
    return 0;
}
