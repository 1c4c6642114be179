#include "intake/open_source.hpp"

#include "intake/delimited_source.hpp"
#include "intake/encoding.hpp"
#include "intake/workbook.hpp"

#include <zip.h>

#include <algorithm>
#include <fstream>
#include <memory>

namespace tracewright {

namespace {

constexpr std::string_view zip_signature = "PK\x03\x04";
constexpr std::string_view empty_zip_signature = "PK\x05\x06";
constexpr std::string_view compound_signature = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1";
constexpr std::size_t looked_at = 4096;
// Control characters that belong to no text; a few are slips, many are not text at all.
constexpr std::size_t binary_from = 10;

using Opened = tl::expected<std::unique_ptr<RowSource>, FileError>;

Opened refused(FileErrorKind kind, const std::string& name, std::string found, std::string expected,
               std::string what_to_do = {}) {
    return tl::make_unexpected(
        FileError{kind, name, 0, 0, std::move(found), std::move(expected), std::move(what_to_do)});
}

// The names of an archive's members; none if it cannot be listed.
std::optional<std::vector<std::string>> members_of(std::string_view bytes) {
    std::vector<std::string> names;
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
    zip_t* archive = source != nullptr ? zip_open_from_source(source, ZIP_RDONLY, &error) : nullptr;
    if (archive != nullptr) {
        const zip_int64_t count = std::min<zip_int64_t>(zip_get_num_entries(archive, 0), 1000);
        for (zip_int64_t i = 0; i < count; ++i) {
            const char* name = zip_get_name(archive, static_cast<zip_uint64_t>(i), 0);
            if (name != nullptr) {
                names.emplace_back(name);
            }
        }
        zip_discard(archive);
    } else if (source != nullptr) {
        zip_source_free(source);
    }
    zip_error_fini(&error);
    return archive != nullptr ? std::optional{std::move(names)} : std::nullopt;
}

Opened from_workbook(tl::expected<Workbook, FileError> workbook, const std::string& name,
                     const SourceOptions& options) {
    if (!workbook) {
        return tl::make_unexpected(workbook.error());
    }
    auto sheet = SheetSource::of(std::move(*workbook), name, options.sheet);
    if (!sheet) {
        return tl::make_unexpected(sheet.error());
    }
    return std::make_unique<SheetSource>(std::move(*sheet));
}

Opened from_zip(const std::string& bytes, const std::string& name, const SourceOptions& options) {
    const auto members = members_of(bytes);
    if (!members) {  // its list stands at its end
        const bool workbook = bytes.find("xl/") != std::string::npos;
        return refused(
            workbook ? FileErrorKind::broken_workbook : FileErrorKind::archive, name,
            std::string(workbook ? "a workbook" : "an archive") + " that is cut off or broken",
            "a whole file", "save or fetch it once more");
    }
    if (std::find(members->begin(), members->end(), "xl/workbook.xml") != members->end()) {
        return from_workbook(xlsx_workbook(bytes, name), name, options);
    }
    std::string tables;
    for (const std::string& member : *members) {
        if (member.ends_with(".csv") || member.ends_with(".txt") || member.ends_with(".tsv")) {
            tables += (tables.empty() ? "" : ", ") + member;
        }
    }
    return refused(
        FileErrorKind::archive, name,
        tables.empty() ? "an archive without a table in it" : "an archive with " + tables,
        "a table of times and values", "unpack it and bring the tables in one by one");
}

bool looks_binary(std::string_view text) {
    const std::string_view sample = text.substr(0, looked_at);
    const auto controls =
        static_cast<std::size_t>(std::count_if(sample.begin(), sample.end(), [](char c) {
            const auto u = static_cast<unsigned char>(c);
            return u < 0x20 && c != '\t' && c != '\n' && c != '\r' && c != '\f';
        }));
    return controls >= binary_from && controls * 20 > sample.size();
}

}  // namespace

tl::expected<std::unique_ptr<RowSource>, FileError> open_source_bytes(
    std::string bytes, const std::string& name, const SourceOptions& options) {
    if (bytes.empty()) {
        return refused(FileErrorKind::empty, name, "0 bytes", "a table of times and values");
    }
    if (bytes.size() > options.most_bytes) {
        return refused(FileErrorKind::too_large, name, std::to_string(bytes.size()) + " bytes",
                       "at most " + std::to_string(options.most_bytes) + " bytes");
    }
    if (bytes.starts_with(zip_signature) || bytes.starts_with(empty_zip_signature)) {
        return from_zip(bytes, name, options);
    }
    if (bytes.starts_with(compound_signature)) {
        return from_workbook(xls_workbook(bytes, name), name, options);
    }
    auto text = decoded(std::move(bytes), options.encoding);
    if (!text) {
        return refused(FileErrorKind::not_readable, name, "encoding '" + *options.encoding + "'",
                       "an encoding such as UTF-8, UTF-16LE, GB 18030 or Windows-1252");
    }
    if (looks_binary(text->text)) {
        return refused(FileErrorKind::not_a_table, name, "bytes that are no text",
                       "delimited text, .xlsx or .xls");
    }
    SourceFacts facts;
    facts.file = name;
    facts.encoding = text->encoding;
    facts.encoding_sure = text->sure;
    return std::make_unique<DelimitedSource>(std::move(text->text), std::move(facts),
                                             options.delimiter);
}

tl::expected<std::unique_ptr<RowSource>, FileError> open_source(const std::string& path,
                                                                const SourceOptions& options) {
    std::ifstream file(path, std::ios::binary | std::ios::ate);
    const auto size = file ? static_cast<std::streamoff>(file.tellg()) : -1;
    if (size < 0) {
        return refused(FileErrorKind::not_readable, path, "nothing that can be opened", "a file");
    }
    if (static_cast<std::size_t>(size) > options.most_bytes) {
        return refused(FileErrorKind::too_large, path, std::to_string(size) + " bytes",
                       "at most " + std::to_string(options.most_bytes) + " bytes");
    }
    std::string bytes(static_cast<std::size_t>(size), '\0');
    file.seekg(0);
    file.read(bytes.data(), size);
    if (file.gcount() != size) {
        return refused(FileErrorKind::not_readable, path, "a file that can't be read to its end",
                       "a file");
    }
    return open_source_bytes(std::move(bytes), path, options);
}

}  // namespace tracewright
