/* What a command is: one file each, listed in commands/commands.c. */
#ifndef COMMANDS_COMMAND_H
#define COMMANDS_COMMAND_H

#include "base/arena.h"
#include "base/problems.h"
#include "site/view.h"

/* Exit codes, a contract with scripts and hooks. */
typedef enum { EXIT_FINE = 0, EXIT_CONTENT = 1, EXIT_USAGE = 2, EXIT_MACHINE = 3 } exit_code;

/* An option of a command: {"--out", "DIR", "where the site is written"}; `value` null: a switch. */
typedef struct {
    const char *name, *value, *help;
} option;

enum { ARGUMENTS_MOST = 64, OPTIONS_MOST = 16 };

/* The arguments after the command's name, read. */
typedef struct {
    const char *words[ARGUMENTS_MOST]; /* the plain ones, in order */
    size_t count;
    const char *option_values[OPTIONS_MOST]; /* as the command's options; "" for a switch given */
    bool json;
} arguments;

typedef struct {
    const char *name;
    const char *usage; /* "site [FOLDER] [--out DIR] [--workers N]" */
    const char *summary;
    const char *help; /* paragraphs for --help */
    option options[OPTIONS_MOST];
    size_t least, most; /* plain arguments */
    exit_code (*run)(arena *a, const arguments *given);
} command;

/* All commands, in the order of the help. */
extern const command *const commands[];
extern const size_t commands_count;

/* Reads the arguments, finds the command, runs it. What main calls. */
exit_code commands_run(int count, char **words);

/* The value of option number `which`, or null when it was not given. */
const char *argument_option(const arguments *given, size_t which);

/* Sets `*count` to the whole number that option number `which` was given, and leaves it when it
 * was not. False when it is no whole number from 1 to `most`. */
bool option_count(const arguments *given, size_t which, unsigned most, unsigned *count);

/* Prints the problems, sorted, to standard error. */
void command_report(problems *found);

/* Prints `document` as JSON and a line end to standard output; EXIT_MACHINE when that fails,
 * `code` otherwise. */
exit_code command_print(const view *document, exit_code code);

/* Prints `words` to standard output; EXIT_MACHINE when that fails, `code` otherwise. */
exit_code command_say(const char *words, exit_code code);

/* Says on standard error, behind the program's name and on one line, what went wrong. */
void command_complain(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* Says what is wrong with the call on standard error; always EXIT_USAGE. */
exit_code command_misused(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* Says on standard error what is wrong with what was asked, and `hint` (null: none) on how to go
 * on; always EXIT_USAGE. */
exit_code command_refuse(const char *hint, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

#endif
