#include "coaching/client_clock.hpp"
#include "diary/food_table.hpp"
#include "intake/photo.hpp"
#include "serve/asked_number.hpp"
#include "serve/brought_in_file.hpp"
#include "serve/diary_form.hpp"
#include "serve/diary_json.hpp"
#include "serve/photo_replies.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "store/diary_book.hpp"
#include "store/foods_of_client.hpp"
#include "store/meal_photo_book.hpp"
#include "store/standing_escalations.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::size_t foods_offered = 12;
constexpr std::size_t most_choices = 50;

Reply unfit(const std::string& detail) {
    return problem(422, "unfit_message", "That is no message", detail);
}

bool foods_left_off(const Asked& asked) {
    return asked.client->facts.cautions.eating.positive != Answered::no;
}

// Said once by the page: what of it stays off the client's papers, and why.
Json eating_note(const Asked& asked) {
    return foods_left_off(asked)
               ? Json(
                     "The eating screen is positive or not answered: foods, photos, grams and "
                     "meals compared stay off the client's papers, and no grams are added up here.")
               : Json();
}

Reply day_reply(Asked& asked) {
    const ZoneHistory clock = client_clock(asked.client->facts);
    // Which day it is, is the client's clock's to say.
    const auto day = asked.values[1] == "today" ? std::optional(clock.date_at(asked.acting.at))
                                                : day_of_text(asked.values[1]);
    if (!day) {
        return problem(422, "not_a_day", "That is no day",
                       "found another text, expected a day such as 2026-03-02");
    }
    DiaryBook book(asked.store);
    const auto entries = book.entries(asked.client->id, clock.day_of(*day).interval());
    if (!entries) {
        return problem_of(entries.error());
    }
    const auto photos = MealPhotoBook(asked.store).lines(asked.client->id);
    if (!photos) {
        return problem_of(photos.error());
    }
    Json json = json_of_diary_day(*entries, *photos, *day, clock, asked.acting.at);
    json["eating_note"] = eating_note(asked);
    return json_reply(json);
}

struct Message {
    CivilDate day{};
    ZoneHistory clock{Zone::floating()};
    ClientFoods own;  ///< the client's, and what was chosen with the message
    std::vector<FoodCorrection> chosen;
    std::vector<ProposedEntry> entries;
};

// Empty unless it is an object with such a text.
std::string text_in(const nlohmann::json& object, const char* name) {
    const bool there = object.is_object() && object.contains(name) && object.at(name).is_string();
    return there ? object.at(name).get<std::string>() : std::string();
}

// "said" is the food of that name, in the tables or of the client.
tl::expected<std::vector<FoodCorrection>, Reply> chosen_of(const nlohmann::json& list,
                                                           const ClientFoods& own) {
    std::vector<FoodCorrection> chosen;
    if (!list.is_array() || list.size() > most_choices) {
        return tl::make_unexpected(unfit("foods: found no list of up to 50, expected one"));
    }
    for (const nlohmann::json& one : list) {
        const std::string said = text_in(one, "said");
        const std::string name = text_in(one, "food");
        const auto called_so = [&](const FoodFacts& food) { return food.name == name; };
        const auto& table = shipped_foods();
        const auto shipped = std::ranges::find_if(table, called_so);
        const auto usual = std::ranges::find_if(own.usual, called_so);
        if (said.empty() || (shipped == table.end() && usual == own.usual.end())) {
            return tl::make_unexpected(unfit("foods: found a food that is not known by its name"));
        }
        chosen.push_back({said, usual != own.usual.end() ? *usual : *shipped});
    }
    return chosen;
}

tl::expected<Message, Reply> message_of(Asked& asked) {
    const auto body = object_of(asked.request, {"text", "day", "foods"});
    if (!body) {
        return tl::make_unexpected(body.error());
    }
    const nlohmann::json& text = body->at("text");
    const nlohmann::json& day = body->at("day");
    if (!text.is_string() || text.get_ref<const std::string&>().size() > longest_message) {
        return tl::make_unexpected(
            unfit("text: found no message of up to 4000 bytes, expected one: paste day by day"));
    }
    const auto date = day.is_string() ? day_of_text(day.get<std::string>()) : std::nullopt;
    if (!date) {
        return tl::make_unexpected(
            problem(422, "not_a_day", "That is no day",
                    "found another text, expected a day such as 2026-03-02"));
    }
    const auto own = foods_of_client(asked.store, asked.client->id);
    if (!own) {
        return tl::make_unexpected(problem_of(own.error()));
    }
    auto chosen = chosen_of(body->at("foods"), *own);
    if (!chosen) {
        return tl::make_unexpected(chosen.error());
    }
    Message message{*date, client_clock(asked.client->facts), *own, std::move(*chosen), {}};
    for (const FoodCorrection& correction : message.chosen) {
        // The last word counts: it takes the place of an earlier one so called.
        std::erase_if(message.own.corrections, [&](const FoodCorrection& earlier) {
            return called(ClientFood(earlier)) == called(ClientFood(correction));
        });
        message.own.add(correction);
    }
    MessageOptions how;
    how.day = message.day;
    how.zones = message.clock;
    how.unit = asked.client->facts.unit;
    how.as_of = asked.acting.at;
    how.foods.client = &message.own;
    message.entries = client_message(text.get<std::string>(), how);
    return message;
}

Reply preview_reply(Asked& asked) {
    const auto message = message_of(asked);
    return message ? json_reply({{"entries", json_of_message(message->entries, message->clock,
                                                             !foods_left_off(asked))}})
                   : message.error();
}

// What was chosen for words that stand in the message is known from then on.
Stored<void> keep_choices(Asked& asked, const Message& message) {
    for (const FoodCorrection& correction : message.chosen) {
        const bool stands = std::ranges::any_of(message.entries, [&](const ProposedEntry& one) {
            return one.eaten && std::ranges::any_of(one.eaten->foods, [&](const EatenFood& food) {
                       return said_of(food) == correction.said;
                   });
        });
        if (stands) {
            if (const auto kept = asked.store.keep_food(asked.client->id, correction, asked.acting);
                !kept) {
                return tl::make_unexpected(kept.error());
            }
        }
    }
    return {};
}

Reply keep_reply(Asked& asked) {
    const auto message = message_of(asked);
    if (!message) {
        return message.error();
    }
    if (message->entries.empty()) {
        return unfit("text: found nothing in it, expected some words");
    }
    if (const auto kept = keep_choices(asked, *message); !kept) {
        return problem_of(kept.error());
    }
    const ClientRecord& client = *asked.client;
    const auto outcome = asked.store.bring_in(
        client.id, brought_in_message(message->entries, "jotted for " + day_text(message->day)),
        WhoseFile::not_asked, asked.acting);
    if (!outcome) {
        return problem_of(outcome.error());
    }
    if (const auto looked = record_escalations(asked.store, client.id, client.facts, asked.acting);
        !looked) {
        return problem_of(looked.error());
    }
    return json_reply({{"stored", outcome->plan.rows_stored},
                       {"there_already", outcome->plan.rows_duplicate},
                       {"import", outcome->import > 0 ? Json(outcome->import) : Json()}},
                      outcome->import > 0 ? 201 : 200);
}

Reply corrected_reply(Asked& asked, std::int64_t number,
                      const std::optional<DiaryEntry>& corrected) {
    DiaryBook book(asked.store);
    const ClientRecord& client = *asked.client;
    const auto import = book.correct(client.id, number, corrected, asked.acting);
    if (!import) {
        return problem_of(import.error());
    }
    if (const auto looked = record_escalations(asked.store, client.id, client.facts, asked.acting);
        !looked) {
        return problem_of(looked.error());
    }
    return json_reply({{"import", *import}});
}

Reply correct_reply(Asked& asked) {
    const auto fields =
        fields_of(asked.request, {"kind", "date", "time", "text", "carbohydrate_g"});
    if (!fields) {
        return fields.error();
    }
    const auto number = asked_number(asked.values[1]);
    DiaryBook book(asked.store);
    const auto entries = book.entries(asked.client->id, {Instant::min(), Instant::max()});
    if (!entries) {
        return problem_of(entries.error());
    }
    const auto found = std::ranges::find_if(
        *entries, [&](const DiaryRecord& one) { return number && one.id == *number; });
    if (found == entries->end()) {
        return no_such_number();
    }
    const auto corrected = corrected_by(found->entry, *fields, client_clock(asked.client->facts),
                                        asked.client->facts.unit, asked.acting.at);
    return corrected ? corrected_reply(asked, *number, *corrected) : corrected.error();
}

Reply strike_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    return number ? corrected_reply(asked, *number, std::nullopt) : no_such_number();
}

Reply foods_reply(Asked& asked) {
    const std::string words = asked.target.asked("words").value_or("");
    const auto own = foods_of_client(asked.store, asked.client->id);
    if (!own) {
        return problem_of(own.error());
    }
    Json list = Json::array();
    const auto add = [&](std::span<const FoodFacts> foods, bool is_own) {
        for (const FoodFound& found : foods_called(words, foods)) {
            if (list.size() < foods_offered) {
                list.push_back({{"food", found.food->name},
                                {"portion", found.food->portion},
                                {"grams", fmt::format("{:.0f} g", found.food->portion_g)},
                                {"own", is_own}});
            }
        }
    };
    add(own->usual, true);
    add(shipped_foods(), false);
    return json_reply({{"foods", std::move(list)}});
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/diary/{date}", Asks::who_may_look, day_reply, Holds::never,
     "diary_seen"},
    {Method::get, "/api/clients/{handle}/foods", Asks::who_may_look, foods_reply},
    {Method::post, "/api/clients/{handle}/diary", Asks::who_may_change, keep_reply},
    {Method::post, "/api/clients/{handle}/diary/preview", Asks::who_may_change, preview_reply,
     Holds::never, nullptr, 64UL * 1024, true},
    {Method::post, "/api/clients/{handle}/diary/entries/{id}/correct", Asks::who_may_change,
     correct_reply},
    {Method::post, "/api/clients/{handle}/diary/entries/{id}/strike", Asks::who_may_change,
     strike_reply},
    {Method::get, "/api/clients/{handle}/photos", Asks::who_may_look, photos_reply, Holds::never,
     "photos_seen"},
    {Method::get, "/api/clients/{handle}/photos/{id}", Asks::who_may_look, photo_reply,
     Holds::never, "photo_seen"},
    {Method::post, "/api/clients/{handle}/diary/entries/{id}/photos", Asks::who_may_change,
     add_photo_reply, Holds::never, nullptr, longest_photo_file},
    {Method::post, "/api/clients/{handle}/photos/{id}/remove", Asks::who_may_change,
     remove_photo_reply},
};

}  // namespace

std::span<const Route> diary_routes() {
    return table;
}

}  // namespace tracewright
