/* Hands the arguments to a command. */
#include "base/memory.h"
#include "commands/command.h"

int main(int count, char **words) {
    memory_keep_little();
    return (int)commands_run(count - 1, words + 1);
}
