#include "commands/command.h"

#include "base/list.h"
#include "base/number.h"
#include "base/words.h"
#include "commands/terminal.h"

#include <errno.h>
#include <stdarg.h>
#include <unistd.h>

extern const command command_start, command_draft, command_site, command_check, command_weigh,
    command_macros, command_swap, command_trial, command_cupboard, command_formulate,
    command_release, command_preview;

const command *const commands[] = {&command_start,     &command_draft,   &command_site,
                                   &command_check,     &command_weigh,   &command_macros,
                                   &command_swap,      &command_trial,   &command_cupboard,
                                   &command_formulate, &command_release, &command_preview};
const size_t commands_count = COUNT(commands);

/* Columns before the explanations in the help. */
enum { HELP_COLUMN = 42 };

/* What is too long has its explanation on the next line. */
static void add_padded(text *t, const char *words) {
    int columns = (int)words_columns(words, strlen(words)), left = HELP_COLUMN - 2 - columns;
    text_format(t, "  %s", words);
    if (left > 0)
        text_format(t, "%*s", left, "");
    else
        text_format(t, "\n%*s", HELP_COLUMN, "");
}

static void print(int fd, text *t) {
    fwrite(t->bytes, 1, t->length, fd == STDERR_FILENO ? stderr : stdout);
    text_free(t);
}

static void add_overview(text *t) {
    text_add(t,
             "crumbnote: weighs, works out and publishes high-protein recipes, with swap notes\n\n"
             "usage: crumbnote COMMAND …\n\n");
    for (size_t i = 0; i < commands_count; i++) {
        add_padded(t, commands[i]->usage);
        text_format(t, "%s\n", commands[i]->summary);
    }
    text_add(t, "\nEvery command takes --json (one document on standard output) and --help.\n"
                "Exit codes: 0 fine, 1 problems in the content, 2 wrong use, 3 the machine "
                "failed.\n");
}

static exit_code help_of(const command *of) {
    text t = TEXT_EMPTY;
    text_format(&t, "usage: crumbnote %s\n\n%s\n", of->usage, of->help);
    text_add(&t, "\nOptions:\n");
    for (size_t i = 0; i < OPTIONS_MOST && of->options[i].name; i++) {
        const option *o = &of->options[i];
        char named[64];
        snprintf(named, sizeof named, "%s %s", o->name, o->value ? o->value : "");
        add_padded(&t, named);
        text_format(&t, "%s\n", o->help);
    }
    add_padded(&t, "--json");
    text_add(&t, "one JSON document on standard output\n");
    add_padded(&t, "--help");
    text_add(&t, "this text\n");
    print(STDOUT_FILENO, &t);
    return EXIT_FINE;
}

static void complain(const char *format, va_list values) {
    text words = TEXT_EMPTY, line = TEXT_EMPTY;
    text_format_values(&words, format, values);
    text_add(&line, "crumbnote: ");
    problem_add_visible(&line, words.bytes);
    text_add_char(&line, '\n');
    text_free(&words);
    print(STDERR_FILENO, &line);
}

void command_complain(const char *format, ...) {
    va_list values;
    va_start(values, format);
    complain(format, values);
    va_end(values);
}

static void say_hint(const char *hint) {
    text line = TEXT_EMPTY;
    text_add(&line, "  hint: ");
    problem_add_visible(&line, hint);
    text_add_char(&line, '\n');
    print(STDERR_FILENO, &line);
}

exit_code command_refuse(const char *hint, const char *format, ...) {
    va_list values;
    va_start(values, format);
    complain(format, values);
    va_end(values);
    if (hint)
        say_hint(hint);
    return EXIT_USAGE;
}

exit_code command_misused(const char *format, ...) {
    va_list values;
    va_start(values, format);
    complain(format, values);
    va_end(values);
    say_hint("crumbnote --help shows the commands");
    return EXIT_USAGE;
}

const char *argument_option(const arguments *given, size_t which) {
    return given->option_values[which];
}

bool option_count(const arguments *given, size_t which, unsigned most, unsigned *count) {
    const char *asked = argument_option(given, which);
    double value = 0;
    if (!asked)
        return true;
    if (!number_is(span_of(asked), &value) || value < 1 || value > most ||
        value > (double)(unsigned)value)
        return false;
    *count = (unsigned)value;
    return true;
}

void command_report(problems *found) {
    text t = TEXT_EMPTY;
    const problem_colours *with = terminal_colours();
    problems_sort(found);
    for (size_t i = 0; i < found->count; i++)
        problem_print_coloured(&found->items[i], with, &t);
    print(STDERR_FILENO, &t);
}

exit_code command_say(const char *words, exit_code code) {
    fputs(words, stdout);
    if (fflush(stdout) == 0)
        return code;
    command_complain("standard output can't be written: %s", strerror(errno));
    return EXIT_MACHINE;
}

exit_code command_print(const view *document, exit_code code) {
    text t = TEXT_EMPTY;
    view_write_json(document, true, &t);
    text_add_char(&t, '\n');
    code = command_say(t.bytes, code);
    text_free(&t);
    return code;
}

static const command *command_named(const char *name) {
    for (size_t i = 0; i < commands_count; i++)
        if (strcmp(commands[i]->name, name) == 0)
            return commands[i];
    return NULL;
}

static exit_code unknown_command(const char *name) {
    const char *known[COUNT(commands)];
    for (size_t i = 0; i < commands_count; i++)
        known[i] = commands[i]->name;
    const char *nearest = words_nearest(span_of(name), known, commands_count);
    if (nearest)
        return command_misused("there is no command \"%s\"; did you mean \"%s\"?", name, nearest);
    return command_misused("there is no command \"%s\"", name);
}

/* Number of the option called `name` (up to an equals sign), or OPTIONS_MOST. */
static size_t option_number(const command *of, span name) {
    for (size_t i = 0; i < OPTIONS_MOST && of->options[i].name; i++)
        if (span_is(name, of->options[i].name))
            return i;
    return OPTIONS_MOST;
}

/* Reads the option at words[*i], its value joined by "=" or the next word. */
static bool take_option(const command *of, int count, char **words, int *i, arguments *given) {
    span word = span_of(words[*i]);
    size_t equals = span_find(word, "=");
    size_t which = option_number(of, span_first(word, equals));
    if (which == OPTIONS_MOST) {
        command_misused("%s has no option \"%.*s\"", of->name, SPAN(span_first(word, equals)));
        return false;
    }
    const char *value = "";
    if (of->options[which].value) {
        if (equals < word.length)
            value = words[*i] + equals + 1;
        else if (*i + 1 < count)
            value = words[++*i];
        else {
            command_misused("%s wants a value: %s %s", of->options[which].name,
                            of->options[which].name, of->options[which].value);
            return false;
        }
    }
    given->option_values[which] = value;
    return true;
}

/* A word that begins with a hyphen is an option, but for "-" and negative amounts. */
static bool is_option(const char *word) {
    return word[0] == '-' && word[1] != '\0' && !(word[1] >= '0' && word[1] <= '9');
}

static bool read_arguments(const command *of, int count, char **words, arguments *given) {
    bool plain_only = false;
    for (int i = 0; i < count; i++) {
        if (!plain_only && strcmp(words[i], "--") == 0)
            plain_only = true;
        else if (!plain_only && strcmp(words[i], "--json") == 0)
            given->json = true;
        else if (!plain_only && is_option(words[i])) {
            if (!take_option(of, count, words, &i, given))
                return false;
        } else if (given->count == of->most || given->count == ARGUMENTS_MOST) {
            command_misused("one argument too many: \"%s\"; usage: crumbnote %s", words[i],
                            of->usage);
            return false;
        } else {
            given->words[given->count++] = words[i];
        }
    }
    if (given->count < of->least)
        command_misused("an argument is missing; usage: crumbnote %s", of->usage);
    return given->count >= of->least;
}

static bool asks_for_help(int count, char **words) {
    for (int i = 0; i < count && strcmp(words[i], "--") != 0; i++)
        if (strcmp(words[i], "--help") == 0)
            return true;
    return false;
}

exit_code commands_run(int count, char **words) {
    text overview = TEXT_EMPTY;
    if (count == 0 || strcmp(words[0], "--help") == 0 || strcmp(words[0], "help") == 0) {
        add_overview(&overview);
        print(count == 0 ? STDERR_FILENO : STDOUT_FILENO, &overview);
        return count == 0 ? EXIT_USAGE : EXIT_FINE;
    }
    const command *of = command_named(words[0]);
    if (!of)
        return unknown_command(words[0]);
    if (asks_for_help(count - 1, words + 1))
        return help_of(of);
    arguments given = {0};
    if (!read_arguments(of, count - 1, words + 1, &given))
        return EXIT_USAGE;
    arena *a = arena_new();
    exit_code code = of->run(a, &given);
    arena_free(a);
    return code;
}
