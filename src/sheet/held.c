/* SPDX-License-Identifier: MIT */
/* What a sheet holds once it is read. */
#include "tree.h"

#include <stdlib.h>

const sil_job *sil_sheet_job(const sil_sheet *sheet)
{
    return sheet->errors > 0 || sheet->store.failed ? NULL : &sheet->job;
}

int sil_sheet_complaint_count(const sil_sheet *sheet)
{
    return sheet ? sheet->told_count : 0;
}

sil_complaint sil_sheet_complaint(const sil_sheet *sheet, int index)
{
    return sheet->sorted[index]->complaint;
}

void sil_sheet_free(sil_sheet *sheet)
{
    if (sheet) {
        text_store_free(&sheet->store);
        free(sheet);
    }
}
