#include "intake/workbook.hpp"

#include <zip.h>
#include <pugixml.hpp>

#include <algorithm>
#include <charconv>
#include <map>
#include <memory>
#include <set>

namespace tracewright {

namespace {

constexpr std::uint64_t most_unpacked = std::uint64_t{512} << 20;
constexpr std::uint32_t most_columns = 16384;  // of the format itself
constexpr std::uint32_t most_rows = 1048576;

struct CloseZip {
    void operator()(zip_t* z) const { zip_discard(z); }
};
struct CloseFile {
    void operator()(zip_file_t* f) const { zip_fclose(f); }
};
using Archive = std::unique_ptr<zip_t, CloseZip>;

FileError broken(const std::string& name, std::string found) {
    return {FileErrorKind::broken_workbook,
            name,
            0,
            0,
            std::move(found),
            "a whole .xlsx workbook",
            "save it again, or save it as comma-separated text"};
}

Archive opened(std::string_view bytes) {
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
    zip_t* archive = source != nullptr ? zip_open_from_source(source, ZIP_RDONLY, &error) : nullptr;
    if (archive == nullptr && source != nullptr) {
        zip_source_free(source);
    }
    zip_error_fini(&error);
    return Archive(archive);
}

// A member's bytes; empty if it is not there, cannot be read or unpacks to more than is allowed.
std::optional<std::string> member(zip_t* archive, const std::string& path) {
    zip_stat_t facts;
    zip_stat_init(&facts);
    if (zip_stat(archive, path.c_str(), 0, &facts) != 0 || (facts.valid & ZIP_STAT_SIZE) == 0 ||
        facts.size > most_unpacked) {
        return std::nullopt;
    }
    const std::unique_ptr<zip_file_t, CloseFile> file(zip_fopen(archive, path.c_str(), 0));
    if (!file) {
        return std::nullopt;
    }
    std::string content(facts.size, '\0');
    std::size_t filled = 0;
    while (filled < content.size()) {
        const zip_int64_t got =
            zip_fread(file.get(), content.data() + filled, content.size() - filled);
        if (got <= 0) {
            return std::nullopt;
        }
        filled += static_cast<std::size_t>(got);
    }
    return content;
}

bool parse(pugi::xml_document& document, const std::string& xml) {
    return static_cast<bool>(document.load_buffer(
        xml.data(), xml.size(), pugi::parse_default | pugi::parse_ws_pcdata_single));
}

// An element's name without its namespace prefix.
std::string_view local_name(const pugi::xml_node& node) {
    const std::string_view name = node.name();
    const auto colon = name.find(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

pugi::xml_node child(const pugi::xml_node& parent, std::string_view name) {
    return parent.find_child([&](const pugi::xml_node& n) { return local_name(n) == name; });
}

// All the text pieces of a shared or inline string, but not its phonetic reading.
std::string rich_text(const pugi::xml_node& item) {
    std::string text;
    for (const pugi::xml_node& part : item.children()) {
        if (local_name(part) == "t") {
            text += part.child_value();
        } else if (local_name(part) == "r") {
            text += child(part, "t").child_value();
        }
    }
    return text;
}

std::vector<std::string> shared_strings(zip_t* archive) {
    std::vector<std::string> strings;
    pugi::xml_document document;
    const auto xml = member(archive, "xl/sharedStrings.xml");
    if (xml && parse(document, *xml)) {
        for (const pugi::xml_node& item : document.document_element().children()) {
            if (local_name(item) == "si") {
                strings.push_back(rich_text(item));
            }
        }
    }
    return strings;
}

// Letters of date and time in a custom format, outside quotes, escapes and [colour] brackets.
bool looks_like_date(std::string_view format) {
    bool quoted = false;
    bool bracket = false;
    for (std::size_t i = 0; i < format.size(); ++i) {
        const char c = format[i];
        if (c == '"') {
            quoted = !quoted;
        } else if (c == '\\') {
            ++i;
        } else if (!quoted && c == '[') {
            bracket = !(i + 1 < format.size() &&
                        std::string_view("hHmMsS").find(format[i + 1]) != std::string_view::npos);
        } else if (!quoted && c == ']') {
            bracket = false;
        } else if (!quoted && !bracket &&
                   std::string_view("yYmMdDhHsS").find(c) != std::string_view::npos) {
            return true;
        }
    }
    return false;
}

bool built_in_date(unsigned id) {
    return (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) ||
           (id >= 50 && id <= 58);
}

// For each cell style whether it shows a date or a time.
std::vector<bool> date_styles(zip_t* archive) {
    std::vector<bool> dates;
    pugi::xml_document document;
    const auto xml = member(archive, "xl/styles.xml");
    if (!xml || !parse(document, *xml)) {
        return dates;
    }
    std::set<unsigned> custom;
    for (const pugi::xml_node& format : child(document.document_element(), "numFmts").children()) {
        if (looks_like_date(format.attribute("formatCode").value())) {
            custom.insert(format.attribute("numFmtId").as_uint());
        }
    }
    for (const pugi::xml_node& style : child(document.document_element(), "cellXfs").children()) {
        const unsigned id = style.attribute("numFmtId").as_uint();
        dates.push_back(built_in_date(id) || custom.contains(id));
    }
    return dates;
}

// "BC12" is column 55; 0 if it is no reference.
std::uint32_t column_of(std::string_view reference) {
    std::uint32_t column = 0;
    for (const char c : reference) {
        if (c < 'A' || c > 'Z') {
            break;
        }
        column = column * 26 + static_cast<std::uint32_t>(c - 'A' + 1);
        if (column > most_columns) {
            return 0;
        }
    }
    return column;
}

// The shortest decimal that is the same number: spreadsheets write the noise of binary fractions.
std::string shortest(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) {
        return std::string(text);
    }
    char buffer[64];
    const auto [last, failed] = std::to_chars(buffer, buffer + sizeof buffer, value);
    return failed == std::errc{} ? std::string(buffer, last) : std::string(text);
}

struct Context {
    std::vector<std::string> strings;
    std::vector<bool> dates;
};

SheetCell cell_of(const pugi::xml_node& node, const Context& context) {
    SheetCell cell;
    const std::string_view type = node.attribute("t").value();
    const std::string_view value = child(node, "v").child_value();
    if (type == "s") {
        std::size_t index = 0;
        std::from_chars(value.data(), value.data() + value.size(), index);
        cell.text = index < context.strings.size() ? context.strings[index] : "";
    } else if (type == "inlineStr") {
        cell.text = rich_text(child(node, "is"));
    } else if (type == "str" || type == "d") {
        cell.text = value;
    } else if (type == "b") {
        cell.text = value == "1" ? "TRUE" : "FALSE";
    } else if (type == "e") {
        cell.text = value;
        cell.form = CellForm::error;
    } else {
        const auto style = node.attribute("s").as_uint();
        cell.text = shortest(value);
        cell.form = style < context.dates.size() && context.dates[style] ? CellForm::date
                                                                         : CellForm::number;
    }
    return cell;
}

Sheet sheet_of(std::string name, const pugi::xml_document& document, const Context& context) {
    Sheet sheet{std::move(name), {}};
    std::uint32_t line = 0;
    for (const pugi::xml_node& row : child(document.document_element(), "sheetData").children()) {
        line = row.attribute("r").as_uint(line + 1);
        if (line == 0 || line > most_rows) {
            break;
        }
        SheetRow cells{line, {}};
        std::uint32_t column = 0;
        for (const pugi::xml_node& node : row.children()) {
            const std::uint32_t told = column_of(node.attribute("r").value());
            column = told > 0 ? told : column + 1;
            SheetCell cell = cell_of(node, context);
            const bool in_order = cells.cells.empty() || cells.cells.back().column < column;
            if (!cell.text.empty() && in_order && column <= most_columns) {
                cell.column = column;
                cells.cells.push_back(std::move(cell));
            }
        }
        sheet.rows.push_back(std::move(cells));
    }
    return sheet;
}

// Where the relations file says a sheet's XML lies.
std::map<std::string, std::string> sheet_paths(zip_t* archive) {
    std::map<std::string, std::string> paths;
    pugi::xml_document document;
    const auto xml = member(archive, "xl/_rels/workbook.xml.rels");
    if (xml && parse(document, *xml)) {
        for (const pugi::xml_node& relation : document.document_element().children()) {
            const std::string target = relation.attribute("Target").value();
            paths[relation.attribute("Id").value()] =
                target.starts_with('/') ? target.substr(1) : "xl/" + target;
        }
    }
    return paths;
}

}  // namespace

tl::expected<Workbook, FileError> xlsx_workbook(std::string_view bytes, const std::string& name) {
    const Archive archive = opened(bytes);
    if (!archive) {
        return tl::make_unexpected(broken(name, "a zip that can't be opened"));
    }
    const auto xml = member(archive.get(), "xl/workbook.xml");
    pugi::xml_document document;
    if (!xml || !parse(document, *xml)) {
        return tl::make_unexpected(broken(name, "a workbook without a readable list of sheets"));
    }
    Workbook workbook{"xlsx workbook", {}, false};
    const pugi::xml_node root = document.document_element();
    workbook.serial_1904 = child(root, "workbookPr").attribute("date1904").as_bool();
    const Context context{shared_strings(archive.get()), date_styles(archive.get())};
    const auto paths = sheet_paths(archive.get());
    for (const pugi::xml_node& listed : child(root, "sheets").children()) {
        std::string relation;
        for (const pugi::xml_attribute& attribute : listed.attributes()) {
            if (std::string_view(attribute.name()).ends_with(":id")) {
                relation = attribute.value();
            }
        }
        const auto path = paths.find(relation);
        const auto sheet_xml =
            path == paths.end() ? std::nullopt : member(archive.get(), path->second);
        pugi::xml_document sheet;
        if (!sheet_xml || !parse(sheet, *sheet_xml)) {
            return tl::make_unexpected(
                broken(name, "a sheet that is missing, broken or too large"));
        }
        workbook.sheets.push_back(sheet_of(listed.attribute("name").value(), sheet, context));
    }
    return workbook;
}

}  // namespace tracewright
