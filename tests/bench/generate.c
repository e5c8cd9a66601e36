/* Writes a site of N recipes for the bench, the same ones for the same seed.
 *
 *     generate FOLDER N [SEED]
 *
 * Recipes are put together from lines that bakers write, about 2.5 kB each, every build of the
 * trade among them; ingredients are those of the reference pantry. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

static uint64_t state;

/* xorshift64*: George Marsaglia, Journal of Statistical Software 8(14), 2003. */
static uint64_t next(void) {
    state ^= state >> 12;
    state ^= state << 25;
    state ^= state >> 27;
    return state * 0x2545F4914F6CDD1DULL;
}

static size_t below(size_t most) {
    return (size_t)(next() >> 33) % most;
}

#define ONE_OF(list) (list)[below(COUNT(list))]

static const char *const powders[] = {"pea protein powder",       "whey protein isolate",
                                      "whey protein concentrate", "brown rice protein powder",
                                      "soy protein isolate",      "hemp protein powder",
                                      "egg white powder"};
static const char *const flours[] = {"oat flour",         "coconut flour",   "almond meal",
                                     "all-purpose flour", "buckwheat flour", "chickpea flour"};
static const char *const butters[] = {"almond butter", "peanut butter", "cashew butter", "tahini"};
static const char *const moist[] = {"1 cup unsweetened applesauce",
                                    "1 1/2 cups mashed banana",
                                    "3/4 cup pumpkin purée",
                                    "1 cup egg whites",
                                    "2 large eggs",
                                    "1 cup plain Greek yogurt"};
static const char *const sweet[] = {"1/4 cup honey", "1/3 cup erythritol", "1/2 cup brown sugar",
                                    "3 tbsp maple syrup"};
static const char *const kinds[] = {"griddle cake", "cake",   "brownie", "cookie",
                                    "bar",          "muffin", "loaf",    "cracker"};
static const char *const tags[] = {"breakfast", "snack",      "after training",
                                   "lunch box", "for a crew", "no oven in the galley",
                                   "quick"};
static const char *const nouns[] = {"rounds", "slices", "squares", "pieces"};
static const char *const adjectives[] = {"Early", "Quiet", "Long",   "Bright", "Plain",
                                         "Deep",  "Soft",  "Golden", "Windy",  "Amber"};
static const char *const places[] = {"towpath",  "landing", "slipway", "weir",   "ferry",
                                     "millpond", "lock",    "reach",   "island", "bridge"};
static const char *const steps[] = {
    "Heat the oven and line the tin, and weigh everything before you begin.",
    "Whisk the dry things together until no streak is left, then make a well in the middle.",
    "Stir the moist things until smooth, pour them into the well and fold with few strokes.",
    "Let the batter stand for ten minutes so that the powder can drink, and look at it again.",
    "Scrape it into the tin, level the top with a wet spoon and knock the tin once on the board.",
    "Bake until the middle springs back and a skewer comes out with moist crumbs only.",
    "Leave it in the tin for ten minutes, then turn it out and let it cool on a rack before "
    "cutting."};

static void write_front(FILE *f, size_t number) {
    const char *noun = ONE_OF(nouns), *kind = ONE_OF(kinds);
    fprintf(f, "---\ntitle: %s %s %s %zu\n", ONE_OF(adjectives), ONE_OF(places), kind, number);
    fprintf(f, "summary: A %s for the bench, put together from what bakers write.\n", kind);
    fprintf(f, "makes: 12 %s\nportion: 2 %s\nkind: %s\n", noun, noun, kind);
    fprintf(f, "minutes: {prepare: %zu, bake: %zu}\noven: 180 C\npan: square 20 cm\n",
            5 + below(20), 10 + below(40));
    fprintf(f, "bake-loss: %zu %%\ningredients:\n", 5 + below(12));
    fprintf(f, "  - %zu g %s\n", 40 + below(8) * 10, ONE_OF(powders));
    fprintf(f, "  - 1 cup %s, sifted\n", ONE_OF(flours));
    fprintf(f, "  - 1/4 cup %s\n", ONE_OF(flours));
    fprintf(f, "  - %s\n", ONE_OF(moist));
    fprintf(f, "  - %zu tbsp %s\n", 2 + below(4), ONE_OF(butters));
    fprintf(f, "  - %s\n  - 1 tsp baking powder\n  - 1/4 tsp salt\n", ONE_OF(sweet));
    fprintf(f, "  - 1/2 cup milk\n  - 1 tsp vanilla extract (optional)\n");
    fprintf(f, "  - group: To serve\n    lines: [2 tbsp %s]\n", ONE_OF(butters));
    fprintf(f, "tags: [%s, %s]\ndate: 2026-%02zu-%02zu\n", tags[below(3)], tags[3 + below(4)],
            1 + below(12), 1 + below(28));
    fprintf(f, "---\n");
}

static void write_body(FILE *f) {
    for (size_t i = 0; i < COUNT(steps); i++)
        fprintf(f, "%zu. %s\n", i + 1, steps[i]);
    fprintf(f, "\n## Notes\n\n");
    for (size_t i = 0; i < 8; i++)
        fprintf(f, "%s %s\n%s", steps[below(COUNT(steps))], steps[below(COUNT(steps))],
                i % 2 ? "\n" : "");
}

static void die(const char *what) {
    perror(what);
    exit(1);
}

static FILE *open_new(const char *path) {
    FILE *f = fopen(path, "w");
    if (!f)
        die(path);
    return f;
}

int main(int count, char **words) {
    char path[4096];
    if (count < 3) {
        fputs("usage: generate FOLDER N [SEED]\n", stderr);
        return 2;
    }
    size_t recipes = (size_t)strtoul(words[2], NULL, 10);
    state = count > 3 ? strtoull(words[3], NULL, 10) | 1 : 20261125;
    mkdir(words[1], 0755);
    snprintf(path, sizeof path, "%s/recipes", words[1]);
    mkdir(path, 0755);
    snprintf(path, sizeof path, "%s/site.yaml", words[1]);
    FILE *site = open_new(path);
    fputs("title: The bench\naddress: https://bench.example/\nlabel: eu\n", site);
    fclose(site);
    for (size_t i = 0; i < recipes; i++) {
        snprintf(path, sizeof path, "%s/recipes/recipe-%06zu.md", words[1], i);
        FILE *f = open_new(path);
        write_front(f, i);
        write_body(f);
        if (fclose(f) != 0)
            die(path);
    }
    return 0;
}
