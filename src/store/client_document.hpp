#pragma once

#include "coaching/client_facts.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// A client's facts as JSON, keys in fixed order, every key present (null: not known). The same
/// text is kept, exported and read in. Schema: docs/formats/client-facts.schema.json.
std::string client_document(const ClientFacts& facts, int indent = -1);

/// Reads such a document; keys that are missing keep what a new client has. Error: the key, what
/// was found and what was expected; unknown keys are errors.
tl::expected<ClientFacts, std::string> client_facts_read(std::string_view document);

/// `facts` changed by a JSON merge patch (RFC 7396: a key with null forgets what it held, lists are
/// replaced whole). Error as above, or that the patch is no JSON object.
tl::expected<ClientFacts, std::string> client_facts_changed(const ClientFacts& facts,
                                                            std::string_view patch);

}  // namespace tracewright
