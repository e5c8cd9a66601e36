#include "measure/units.h"

#include "base/list.h"
#include "base/words.h"

/* Masses and volumes: NIST Handbook 44, appendix C, and NIST SP 811, appendix B.8 (exact: an inch
 * is 2.54 cm, a US liquid gallon 231 cubic inches, an avoirdupois pound 453.59237 g). Imperial:
 * 4.54609 L to the gallon, UK Weights and Measures Act 1985. Pinch, dash, smidgen, drop and
 * dessertspoon: common practice, no source. */
static const unit units[] = {
    {"mg", UNIT_MASS, 0.001},
    {"g", UNIT_MASS, 1},
    {"kg", UNIT_MASS, 1000},
    {"oz", UNIT_MASS, 28.349523125},
    {"lb", UNIT_MASS, 453.59237},
    {"ml", UNIT_VOLUME, 1},
    {"cl", UNIT_VOLUME, 10},
    {"dl", UNIT_VOLUME, 100},
    {"l", UNIT_VOLUME, 1000},
    {"drop", UNIT_VOLUME, 0.05},
    {"tsp", UNIT_VOLUME, 4.92892159375},
    {"dessertspoon", UNIT_VOLUME, 9.8578431875},
    {"tbsp", UNIT_VOLUME, 14.78676478125},
    {"fl oz", UNIT_VOLUME, 29.5735295625},
    {"cup", UNIT_VOLUME, 236.5882365},
    {"metric cup", UNIT_VOLUME, 250},
    {"pint", UNIT_VOLUME, 473.176473},
    {"quart", UNIT_VOLUME, 946.352946},
    {"gallon", UNIT_VOLUME, 3785.411784},
    {"imperial fl oz", UNIT_VOLUME, 28.4130625},
    {"imperial pint", UNIT_VOLUME, 568.26125},
    {"imperial quart", UNIT_VOLUME, 1136.5225},
    {"imperial gallon", UNIT_VOLUME, 4546.09},
    {"smidgen", UNIT_PINCH, 1.0 / 32},
    {"pinch", UNIT_PINCH, 1.0 / 16},
    {"dash", UNIT_PINCH, 1.0 / 8},
    {"small", UNIT_COUNT, 1},
    {"medium", UNIT_COUNT, 1},
    {"large", UNIT_COUNT, 1},
    {"extra large", UNIT_COUNT, 1},
    {"jumbo", UNIT_COUNT, 1},
    {"each", UNIT_COUNT, 1},
    {"piece", UNIT_COUNT, 1},
    {"scoop", UNIT_COUNT, 1},
    {"stick", UNIT_COUNT, 1},
    {"pat", UNIT_COUNT, 1},
    {"knob", UNIT_COUNT, 1},
    {"packet", UNIT_COUNT, 1},
    {"sachet", UNIT_COUNT, 1},
    {"envelope", UNIT_COUNT, 1},
    {"pouch", UNIT_COUNT, 1},
    {"bag", UNIT_COUNT, 1},
    {"box", UNIT_COUNT, 1},
    {"carton", UNIT_COUNT, 1},
    {"container", UNIT_COUNT, 1},
    {"tub", UNIT_COUNT, 1},
    {"pot", UNIT_COUNT, 1},
    {"can", UNIT_COUNT, 1},
    {"tin", UNIT_COUNT, 1},
    {"jar", UNIT_COUNT, 1},
    {"bottle", UNIT_COUNT, 1},
    {"bar", UNIT_COUNT, 1},
    {"block", UNIT_COUNT, 1},
    {"square", UNIT_COUNT, 1},
    {"cube", UNIT_COUNT, 1},
    {"sheet", UNIT_COUNT, 1},
    {"leaf", UNIT_COUNT, 1},
    {"slice", UNIT_COUNT, 1},
    {"wedge", UNIT_COUNT, 1},
    {"strip", UNIT_COUNT, 1},
    {"rasher", UNIT_COUNT, 1},
    {"fillet", UNIT_COUNT, 1},
    {"clove", UNIT_COUNT, 1},
    {"head", UNIT_COUNT, 1},
    {"bulb", UNIT_COUNT, 1},
    {"bunch", UNIT_COUNT, 1},
    {"sprig", UNIT_COUNT, 1},
    {"stalk", UNIT_COUNT, 1},
    {"ear", UNIT_COUNT, 1},
    {"pod", UNIT_COUNT, 1},
    {"handful", UNIT_COUNT, 1},
    {"splash", UNIT_COUNT, 1},
    {"drizzle", UNIT_COUNT, 1},
};

/* Other spellings. Their plurals in s and es are read too. */
static const struct {
    const char *spelled, *name;
} spellings[] = {
    {"milligram", "mg"},
    {"milligramme", "mg"},
    {"gram", "g"},
    {"gramme", "g"},
    {"gm", "g"},
    {"gr", "g"},
    {"kilo", "kg"},
    {"kilogram", "kg"},
    {"kilogramme", "kg"},
    {"ounce", "oz"},
    {"pound", "lb"},
    {"millilitre", "ml"},
    {"milliliter", "ml"},
    {"cc", "ml"},
    {"centilitre", "cl"},
    {"centiliter", "cl"},
    {"decilitre", "dl"},
    {"deciliter", "dl"},
    {"litre", "l"},
    {"liter", "l"},
    {"ltr", "l"},
    {"t", "tsp"},
    {"teaspoon", "tsp"},
    {"tea spoon", "tsp"},
    {"teaspoonful", "tsp"},
    {"dstspn", "dessertspoon"},
    {"dsp", "dessertspoon"},
    {"dessert spoon", "dessertspoon"},
    {"dessertspoonful", "dessertspoon"},
    {"T", "tbsp"},
    {"Tb", "tbsp"},
    {"tbs", "tbsp"},
    {"tbl", "tbsp"},
    {"tablespoon", "tbsp"},
    {"table spoon", "tbsp"},
    {"tablespoonful", "tbsp"},
    {"c", "cup"},
    {"cupful", "cup"},
    {"floz", "fl oz"},
    {"fl ounce", "fl oz"},
    {"fluid ounce", "fl oz"},
    {"fluid oz", "fl oz"},
    {"pt", "pint"},
    {"qt", "quart"},
    {"gal", "gallon"},
    {"imperial fluid ounce", "imperial fl oz"},
    {"uk fl oz", "imperial fl oz"},
    {"uk fluid ounce", "imperial fl oz"},
    {"uk pint", "imperial pint"},
    {"uk quart", "imperial quart"},
    {"uk gallon", "imperial gallon"},
    {"smidge", "smidgen"},
    {"pinchful", "pinch"},
    {"sm", "small"},
    {"med", "medium"},
    {"lg", "large"},
    {"lge", "large"},
    {"small sized", "small"},
    {"medium sized", "medium"},
    {"large sized", "large"},
    {"small size", "small"},
    {"medium size", "medium"},
    {"large size", "large"},
    {"x large", "extra large"},
    {"xl", "extra large"},
    {"whole", "each"},
    {"pc", "piece"},
    {"pkt", "packet"},
    {"pack", "packet"},
    {"package", "packet"},
    {"pkg", "packet"},
    {"leaves", "leaf"},
    /* in German */
    {"Gramm", "g"},
    {"EL", "tbsp"},
    {"Esslöffel", "tbsp"},
    {"TL", "tsp"},
    {"Teelöffel", "tsp"},
    {"Tasse", "cup"},
    {"Tassen", "cup"},
    {"Prise", "pinch"},
    {"Prisen", "pinch"},
    {"Stück", "piece"},
    {"Messlöffel", "scoop"},
    {"Päckchen", "packet"},
    {"Pck", "packet"},
    {"Scheibe", "slice"},
    {"Scheiben", "slice"},
    {"Zehe", "clove"},
    {"Zehen", "clove"},
};

/* -- standards --------------------------------------------------------------------------------- */

static const struct {
    double cup, tbsp, tsp, fl_oz;
} standards[] = {
    [CUPS_US] = {236.5882365, 14.78676478125, 4.92892159375, 29.5735295625}, /* NIST Handbook 44 */
    [CUPS_US_LABEL] = {240, 15, 5, 30},              /* 21 CFR 101.9(b)(5)(viii) */
    [CUPS_METRIC] = {250, 15, 5, 29.5735295625},     /* common practice, no source */
    [CUPS_AUSTRALIAN] = {250, 20, 5, 29.5735295625}, /* common practice, no source */
};

double cup_ml(cup_standard which) {
    return standards[which].cup;
}

double tablespoon_ml(cup_standard which) {
    return standards[which].tbsp;
}

double teaspoon_ml(cup_standard which) {
    return standards[which].tsp;
}

double unit_ml(const unit *of, cup_standard which) {
    const struct {
        const char *name;
        double ml;
    } own[] = {{"cup", standards[which].cup},
               {"tbsp", standards[which].tbsp},
               {"tsp", standards[which].tsp},
               {"fl oz", standards[which].fl_oz},
               {"dessertspoon", 2 * standards[which].tsp}};
    for (size_t i = 0; i < COUNT(own); i++)
        if (strcmp(of->name, own[i].name) == 0)
            return own[i].ml;
    if (of->sort == UNIT_PINCH)
        return of->size * standards[which].tsp;
    return of->sort == UNIT_VOLUME ? of->size : 0;
}

/* -- reading ----------------------------------------------------------------------------------- */

static char lower(char c) {
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Bytes past ASCII are letters here: "gé" is no gram. */
static bool goes_on(span s, size_t i) {
    if (i >= s.length)
        return false;
    char c = lower(s.at[i]);
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (unsigned char)c >= 0x80;
}

/* The gap between two words of a unit: a full stop, spaces, a hyphen. */
static size_t gap(span s, size_t from) {
    size_t i = from;
    if (i < s.length && s.at[i] == '.')
        i++;
    while (i < s.length && (s.at[i] == ' ' || s.at[i] == '-'))
        i++;
    return i - from;
}

/* Letters compare without case, but for one-letter spellings: t is a teaspoon, T a tablespoon. */
static bool same_letter(char written, char spelled, bool exact) {
    return exact ? written == spelled : lower(written) == lower(spelled);
}

/* Bytes of `s` that spell `word`, its end not yet looked at; 0: it does not. */
static size_t spelled_at(span s, const char *word) {
    bool exact = (word[0] == 't' || word[0] == 'T') && word[1] == '\0';
    size_t i = 0;
    for (const char *w = word; *w; w++) {
        size_t step = *w == ' ' ? gap(s, i) : i < s.length && same_letter(s.at[i], *w, exact);
        if (!step)
            return 0;
        i += step;
    }
    return i;
}

/* The plural ending at byte `i`, 0: none. One letter has none ("gs"). */
static size_t plural_ending(span s, size_t i) {
    static const char *const endings[] = {"es", "s"};
    for (size_t k = 0; k < COUNT(endings) && i > 1; k++) {
        size_t length = spelled_at(span_from(s, i), endings[k]);
        if (length && !goes_on(s, i + length))
            return length;
    }
    return 0;
}

/* Bytes of `s` that are the unit spelled `word`, plural and full stop included; 0: none. */
static size_t unit_length(span s, const char *word) {
    size_t i = spelled_at(s, word);
    if (!i)
        return 0;
    i += plural_ending(s, i);
    if (goes_on(s, i))
        return 0;
    bool stop = i < s.length && s.at[i] == '.' && !goes_on(s, i + 1);
    return i + stop;
}

const unit *unit_named(const char *name) {
    for (size_t i = 0; i < COUNT(units); i++)
        if (units[i].name[0] == name[0] && strcmp(units[i].name, name) == 0)
            return &units[i];
    return NULL;
}

const unit *unit_read(span s, size_t *used) {
    const unit *best = NULL;
    size_t longest = 0;
    for (size_t i = 0; i < COUNT(units); i++) {
        size_t length = unit_length(s, units[i].name);
        if (length > longest) {
            longest = length;
            best = &units[i];
        }
    }
    for (size_t i = 0; i < COUNT(spellings); i++) {
        size_t length = unit_length(s, spellings[i].spelled);
        if (length > longest) {
            longest = length;
            best = unit_named(spellings[i].name);
        }
    }
    if (best)
        *used = longest;
    return best;
}

bool unit_is_size(const unit *of) {
    static const char *const sizes[] = {"small", "medium", "large", "extra large", "jumbo"};
    for (size_t i = 0; i < COUNT(sizes); i++)
        if (strcmp(of->name, sizes[i]) == 0)
            return true;
    return false;
}

const char *unit_nearest_weight(span word) {
    static const char *const weights[] = {"g",    "kg",    "mg",    "oz",    "lb",
                                          "gram", "ounce", "pound", "grams", "kilogram"};
    return words_nearest(word, weights, COUNT(weights));
}
