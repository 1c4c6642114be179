// Any body: exactly the texts that were asked for, or a problem with a status of its own.
#include "serve/request_body.hpp"

#include <cstdint>
#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    Request request;
    request.content_type = "application/json";
    request.body.assign(reinterpret_cast<const char*>(data), size);
    const auto fields = fields_of(request, {"coach", "passphrase"});
    const bool whole = fields ? fields->size() == 2 && fields->contains("coach")
                              : fields.error().status == 400 || fields.error().status == 422;
    if (!whole) {
        std::abort();
    }
    return 0;
}
