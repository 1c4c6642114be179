#pragma once

#include <string>
#include <utility>
#include <vector>

namespace tracewright {

/// What scripts/demo-practice reads to make the practice, from a manifest of practice.json's form:
/// file names within the folder `set-up` with their bytes. Of each client a KEY.json of facts as
/// `client add --facts` takes them; clients.tsv (handle, key, name) and promises.tsv (handle, due,
/// kept or open, text). What the coaches asked about was answered 'no' unless the story says
/// otherwise.
std::vector<std::pair<std::string, std::string>> set_up_papers(const std::string& manifest);

}  // namespace tracewright
