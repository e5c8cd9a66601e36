/* Runs a command and prints what the system says of it: wall seconds, processor seconds, peak
 * memory in MB. Its output goes to /dev/null.
 *
 *     timed COMMAND [ARGUMENT…] */
#include <fcntl.h>
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

static double now(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static double seconds(struct timeval t) {
    return (double)t.tv_sec + (double)t.tv_usec / 1e6;
}

int main(int count, char **words) {
    if (count < 2)
        return 2;
    double start = now();
    pid_t child = fork();
    if (child == 0) {
        int nowhere = open("/dev/null", O_WRONLY);
        dup2(nowhere, STDOUT_FILENO);
        dup2(nowhere, STDERR_FILENO);
        execvp(words[1], words + 1);
        _exit(127);
    }
    int status = 0;
    struct rusage used;
    if (child < 0 || wait4(child, &status, 0, &used) < 0) {
        perror("timed");
        return 1;
    }
    printf("%.3f %.3f %.1f\n", now() - start, seconds(used.ru_utime) + seconds(used.ru_stime),
           (double)used.ru_maxrss / 1024);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 1;
}
