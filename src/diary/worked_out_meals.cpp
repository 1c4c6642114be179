#include "diary/worked_out_meals.hpp"

#include "diary/eaten_text.hpp"

namespace tracewright {

WorkedOut work_out_meals(Diary& diary, const ClientFoods& own) {
    WorkedOut done;
    const auto basis = basis_to_fill_in(diary);
    done.by_no_basis = !basis;
    for (DiaryEntry& entry : diary) {
        if (entry.kind != DiaryKind::meal || entry.text.empty() || entry.not_described) {
            continue;
        }
        const EatenText eaten = eaten_text(entry.text, {&own});
        if (!entry.carbohydrate_g) {
            ++done.texts;
            done.meals += basis && fill_in(entry, eaten, *basis) ? 1 : 0;
        }
        if (const auto name = clients_name(eaten)) {
            entry.text = *name;
        }
    }
    return done;
}

}  // namespace tracewright
