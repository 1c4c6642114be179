#include "serve/asked_export.hpp"

#include "serve/request_body.hpp"
#include "store/client_export.hpp"
#include "store/meal_photo_book.hpp"

#include <algorithm>

namespace tracewright {

namespace {

Reply file_reply(const Asked& asked, std::string bytes, const char* type) {
    Reply reply = text_reply(std::move(bytes), type);
    reply.headers.emplace_back(
        "Content-Disposition",
        "attachment; filename=\"" + asked.client->handle + "-" + asked.values[1] + "\"");
    return reply;
}

// One alone is opened, and nothing else of the client.
Reply photo_file_reply(Asked& asked, MealPhotoBook& book, std::int64_t number) {
    auto photo = book.photo(asked.client->id, number);
    if (!photo) {
        return problem_of(photo.error());
    }
    const auto noted = asked.store.note_look(asked.client->id, "client_exported", asked.acting);
    return noted ? file_reply(asked, std::move(photo->jpeg), "image/jpeg")
                 : problem_of(noted.error());
}

}  // namespace

Reply export_reply(Asked& asked) {
    MealPhotoBook book(asked.store);
    const auto photos = book.lines(asked.client->id);
    if (!photos) {
        return problem_of(photos.error());
    }
    const auto photo = std::ranges::find(*photos, asked.values[1], exported_file_of);
    if (photo != photos->end()) {
        return photo_file_reply(asked, book, photo->id);
    }
    const auto holdings = asked.store.holdings(asked.client->id, asked.acting);
    if (!holdings) {
        return problem_of(holdings.error());
    }
    for (ExportedFile& file : client_export(*holdings, *photos)) {
        if (file.name == asked.values[1]) {
            return file_reply(
                asked, std::move(file.bytes),
                file.name.ends_with(".json") ? "application/json" : "text/csv; charset=utf-8");
        }
    }
    return problem(404, "not_found", "There is no such file", "found no file of this name");
}

Reply erase_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"confirm", "without_export"});
    if (!fields) {
        return fields.error();
    }
    const auto audit = asked.store.audit(asked.client->id);
    if (!audit) {
        return problem_of(audit.error());
    }
    const bool exported = std::ranges::any_of(
        *audit, [](const AuditLine& line) { return line.deed == "client_exported"; });
    if (!exported && fields->at("without_export") != "yes") {
        return problem(422, "not_exported", "The client was not erased",
                       "found no export of this client yet, expected one first");
    }
    if (fields->at("confirm") != asked.client->handle) {
        return problem(422, "not_confirmed", "The client was not erased",
                       "found another text, expected the client's handle: this can't be undone");
    }
    const auto erased = asked.store.erase_client(asked.client->id, asked.acting);
    return erased ? no_content() : problem_of(erased.error());
}

}  // namespace tracewright
