#include "serve/photo_replies.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"
#include "intake/photo.hpp"
#include "serve/asked_number.hpp"
#include "store/meal_photo_book.hpp"
#include "time/day_text.hpp"

namespace tracewright {

Reply photos_reply(Asked& asked) {
    const auto lines = MealPhotoBook(asked.store).lines(asked.client->id);
    if (!lines) {
        return problem_of(lines.error());
    }
    const ZoneHistory clock = client_clock(asked.client->facts);
    Json list = Json::array();
    for (const MealPhotoLine& line : *lines) {
        list.push_back({{"id", line.id},
                        {"entry", line.entry},
                        {"meal_at", day_and_time(clock.wall_time(line.meal_at), clock.writing())}});
    }
    return json_reply({{"photos", std::move(list)}});
}

Reply photo_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    auto photo = MealPhotoBook(asked.store).photo(asked.client->id, *number);
    return photo ? text_reply(std::move(photo->jpeg), "image/jpeg") : problem_of(photo.error());
}

Reply add_photo_reply(Asked& asked) {
    if (asked.request.content_type != "application/octet-stream") {
        return problem(415, "not_a_file", "The body can't be used",
                       "found another type of body, expected application/octet-stream");
    }
    const auto entry = asked_number(asked.values[1]);
    if (!entry) {
        return no_such_number();
    }
    const auto photo = photo_anew(asked.request.body);
    if (!photo) {
        return problem(422, "unfit_photo", "The photo was not kept", photo.error());
    }
    const auto number =
        MealPhotoBook(asked.store).add(asked.client->id, *entry, *photo, asked.acting);
    return number ? json_reply({{"id", *number}}, 201) : problem_of(number.error());
}

Reply remove_photo_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    const auto gone = MealPhotoBook(asked.store).remove(asked.client->id, *number, asked.acting);
    return gone ? no_content() : problem_of(gone.error());
}

}  // namespace tracewright
