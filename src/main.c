/* Hands the arguments to a command. */
#include "commands/command.h"

int main(int count, char **words) {
    return (int)commands_run(count - 1, words + 1);
}
