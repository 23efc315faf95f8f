/* SPDX-License-Identifier: MIT */
/* A reading in fractions of an inch is no finer than its fraction; a dimension in them is exact. */
#include <stdio.h>
#include <string.h>

#include <sillet/sillet.h>

#include "near.h"

static void a_fraction_tells_its_denominator(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        int denominator;
    } rows[] = {{"5/64 in", 64},
                {"5/64", 64},
                {"5/64ths in", 64},
                {"1 3/16\"", 16},
                {"1-3/16 in", 16},
                {" 3/32 inches ", 32},
                {"7\xE2\x81\x84"
                 "128 in",
                 128}, /* fraction slash */
                {"25\xC2\xBD in", 2},
                {"\xC2\xBE in", 4},
                {"1 \xE2\x85\x9D\"", 8},
                {"3/100 in", 100},
                {"-1/64 in", 64},
                {"0.094 in", 0},
                {"2.4 mm", 0},
                {"12 thou", 0},
                {"2 1/2 thou", 0}, /* of a thousandth: no scale is marked so */
                {"2 1/2 mils", 0},
                {"1/2 thousandths", 0},
                {"", 0}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        int denominator = sil_fraction_of(rows[k].text, strlen(rows[k].text));
        if (denominator != rows[k].denominator) {
            fail_msg("%s: wanted %d, got %d", rows[k].text, rows[k].denominator, denominator);
        }
    }
    assert_int_equal(sil_fraction_of("5/6499", 4), 64); /* the text ends where it is said to */
}

/* Half a step of the scale: 1/128 in is 0.1984 mm. A rule in eighths has finer marks, too. */
static void a_scale_is_read_to_half_a_step(void **state)
{
    (void)state;
    near(sil_graduation(64), 25.4 / 128.0, 1e-15);
    near(sil_graduation(100), 0.127, 1e-15);
    near(sil_graduation(32), 0.396875, 1e-15);
    near(sil_graduation(2), 0.396875, 1e-15);
    near(sil_graduation(0), 0.0, 0.0);
}

/* The tools at a visit of a sheet in inches with these readings and tools. */
static sil_tools tools_of(const char *readings, const char *tools, int visit)
{
    char text[2048];
    sil_sheet *sheet;
    snprintf(text, sizeof text,
             "sillet: 1\nunits: in\nprofile: steel-string-acoustic\n"
             "instrument: {scale: 25 1/2, crown: 3/64}\ntargets: {action: {treble: 5/64, "
             "bass: 6/64}}\n%s\nreadings: [%s]\n",
             tools, readings);
    sil_sheet_read_bytes(text, strlen(text), "graduation", "profiles", &sheet);
    const sil_job *job = sil_sheet_job(sheet);
    assert_non_null(job);
    sil_tools found = sil_job_tools(job, visit);
    sil_bench bench;
    sil_job_bench(job, visit, &bench);
    near(bench.tools.action, found.action, 0.0);
    sil_sheet_free(sheet);
    return found;
}

static void a_tool_is_no_finer_than_what_is_read_on_it(void **state)
{
    (void)state;
    sil_tools plain = tools_of("{action: 0.09, first: 0.01}", "", 0);
    near(plain.action, 0.1, 1e-15); /* the profile's; nor has a dimension or a target a scale */
    near(plain.caliper, 0.05, 1e-15);
    sil_tools ruler = tools_of("{action: {treble: 5/64, bass: 3/32}, first: 0.01}", "", 0);
    near(ruler.action, 25.4 / 128.0, 1e-15);
    near(ruler.first, 0.02, 1e-15);
    near(ruler.relief, 0.02, 1e-15);
    near(tools_of("{action: [1/8, 3/32, 0.1, 0.1, 0.1, 0.1]}", "", 0).action, 25.4 / 64.0, 1e-15);
    near(tools_of("{relief: 1/64}", "", 0).relief, 25.4 / 128.0, 1e-15);
    near(tools_of("{relief: {gap: 1/64, at: 7}}", "", 0).relief, 25.4 / 128.0, 1e-15);
    near(tools_of("{first: [1/64, 0.02, 0.02, 0.02, 0.02, 0.02]}", "", 0).first, 25.4 / 128.0,
         1e-15);
    near(tools_of("{first: 0.02, first_open: 1/32}", "", 0).first, 25.4 / 64.0, 1e-15);
    near(tools_of("{saddle_height: {treble: 11/32, bass: 25/64}}", "", 0).caliper, 25.4 / 128.0,
         1e-15);
    near(tools_of("{bridge_top: 3/32}", "", 0).caliper, 25.4 / 64.0, 1e-15);
    near(tools_of("{action: 5/64}", "tools: {action: 0.02}", 0).action, 0.508, 1e-12); /* coarser */
}

/* The finest fraction of a key on the whole sheet tells how its scale is marked; a visit whose
 * reading is no fraction was taken with another tool. */
static void a_sheet_has_one_rule_for_a_key(void **state)
{
    (void)state;
    const char *visits = "{action: 3/32}, {action: 5/64}, {action: 0.08}";
    near(tools_of(visits, "", 0).action, 25.4 / 128.0, 1e-15);
    near(tools_of(visits, "", 1).action, 25.4 / 128.0, 1e-15);
    near(tools_of(visits, "", 2).action, 0.1, 1e-15);
    near(tools_of("{action: 3/32, relief: 1/64}", "", 0).action, 25.4 / 64.0, 1e-15);
    near(tools_of(visits, "", -1).action, 0.1, 1e-15);
    near(tools_of(visits, "", 3).action, 0.1, 1e-15);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_fraction_tells_its_denominator),
        cmocka_unit_test(a_scale_is_read_to_half_a_step),
        cmocka_unit_test(a_tool_is_no_finer_than_what_is_read_on_it),
        cmocka_unit_test(a_sheet_has_one_rule_for_a_key),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
