/* The problems as programs take them: one JSON document, the annotations of a hosted runner, or
 * SARIF 2.1.0 (OASIS Standard, 2020).
 *
 * Files are named from where the command was called, so that a program finds them: the site
 * folder's path is put before each (but in the JSON document, whose files are relative to the
 * site). All functions borrow their arguments; views are in `a`. */
#ifndef CHECK_REPORT_H
#define CHECK_REPORT_H

#include "base/problems.h"
#include "check/run.h"
#include "site/view.h"

/* {problems: [{file, line, column, level, check, message, hint}], errors, warnings, recipes}.
 * `check` is "reading" for what was found in reading and has no name. */
view *report_document(arena *a, const check_report *report, const problems *found);

/* A log with one run, its rules the checks. Columns count code points. A hint is the second line
 * of a message. */
view *report_sarif(arena *a, const char *folder, const problems *found);

/* A line for each problem: "::error file=…,line=…,col=…,title=…::message", with %, line ends and,
 * in the properties, colons and commas written as %25 and the like. */
void report_annotations(const char *folder, const problems *found, text *out);

#endif
