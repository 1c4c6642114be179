#include "serve/asked_export.hpp"

#include "serve/request_body.hpp"
#include "store/client_export.hpp"
#include "store/meal_photo_book.hpp"

#include <algorithm>

namespace tracewright {

Reply export_reply(Asked& asked) {
    const auto holdings = asked.store.holdings(asked.client->id, asked.acting);
    if (!holdings) {
        return problem_of(holdings.error());
    }
    const auto photos = MealPhotoBook(asked.store).photos(asked.client->id);
    if (!photos) {
        return problem_of(photos.error());
    }
    for (ExportedFile& file : client_export(*holdings, *photos)) {
        if (file.name == asked.values[1]) {
            Reply reply = text_reply(std::move(file.bytes),
                                     file.name.ends_with(".json")  ? "application/json"
                                     : file.name.ends_with(".jpg") ? "image/jpeg"
                                                                   : "text/csv; charset=utf-8");
            reply.headers.emplace_back(
                "Content-Disposition",
                "attachment; filename=\"" + asked.client->handle + "-" + file.name + "\"");
            return reply;
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
