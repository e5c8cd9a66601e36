#include "unit/support/cmocka_rows.h"

#include "swap/also.h"

static void asking_for_amounts_is_told(void **state) {
    (void)state;
    static const struct {
        const char *also;
        bool asks;
    } rows[] = {
        {NULL, false},
        {"Let the batter stand ten minutes.", false},
        {"Bake about 15 C cooler.", false},
        {"Chill what has to be cut or shaped.", false},
        {"Melt the chocolate and let it cool before it goes in.", false},
        {"Add one egg for each 1/4 cup of coconut flour and let the batter stand ten minutes.",
         true},
        {"One more egg white brings back some of the set.", true},
        {"Hold back the liquid and cut any added fat by a quarter.", true},
        {"A pinch of xanthan helps with rice, millet and sorghum.", true},
        {"Sweeten a little more.", true},
        {"It thins; eggshells and cutlets are no matter.", false},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].also ? rows[i].also : "nothing", also_asks_amounts(rows[i].also),
                    rows[i].asks);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(asking_for_amounts_is_told)};
    return cmocka_run_group_tests_name("also", tests, NULL, NULL);
}
