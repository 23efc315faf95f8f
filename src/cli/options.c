/* SPDX-License-Identifier: MIT */
/* Makes the plan of a sheet with the options given, for one sheet or for each of many. */
#include "many.h"

sil_status cli_make_plan(const cli_options *order, const sil_job *job, sil_plan **plan)
{
    sil_status status = sil_plan_make(job, plan);
    if (status == SIL_DONE && order->stage >= 0) {
        sil_plan_keep(*plan, (sil_stage_name)order->stage);
    }
    return status;
}

sil_unit cli_plan_unit(const cli_options *order, const sil_job *job)
{
    return order->unit >= 0 ? (sil_unit)order->unit : job->units;
}
