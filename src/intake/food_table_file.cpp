#include "intake/food_table_file.hpp"

#include "intake/column_title.hpp"
#include "intake/number_text.hpp"
#include "intake/plain_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace tracewright {

namespace {

struct Column {
    std::string_view name;
    std::optional<double> FoodFacts::*value = nullptr;  ///< null: a text, or the portion's weight
    double most = 0;
    double times = 1;
};
constexpr double kilojoules = 1 / 4.184;
constexpr std::array columns{Column{"food"},
                             Column{"portion"},
                             Column{"portion_g"},
                             Column{"energy_kcal", &FoodFacts::energy_kcal, 950, 1},
                             Column{"energy_kj", &FoodFacts::energy_kcal, 3975, kilojoules},
                             Column{"carbohydrate", &FoodFacts::carbohydrate_g, 100.5, 1},
                             Column{"fibre", &FoodFacts::fibre_g, 100.5, 1},
                             Column{"protein", &FoodFacts::protein_g, 100.5, 1},
                             Column{"fat", &FoodFacts::fat_g, 100.5, 1},
                             Column{"gi", &FoodFacts::glycaemic_index, 200, 1},
                             Column{"source"}};

const Column* column_called(std::string_view name) {
    const auto found = std::find_if(columns.begin(), columns.end(),
                                    [&](const Column& one) { return one.name == name; });
    return found == columns.end() ? nullptr : &*found;
}

bool holds(std::string_view text, std::string_view part) {
    return text.find(part) != std::string_view::npos;
}

// What a title says. Empty if nothing.
std::string_view meaning_of(const std::string& written) {
    const std::string title = lower_case(plain(written));
    if (title == "portion_g" || title == "portion (g)" || title == "portion g") {
        return "portion_g";
    }
    if (title == "gi" || title == "source") {
        return title == "gi" ? "gi" : "source";
    }
    if (title == "name" || title == "lebensmittel" || title == "aliment" || title == "alimento" ||
        title == "food name" || title == "description") {
        return "food";
    }
    switch (title_meaning(title).role) {
        case Role::meal_text:
            return "food";
        case Role::portion:
            return "portion";
        case Role::energy:
            return holds(title, "kj") ? "energy_kj" : "energy_kcal";
        case Role::carbohydrate:
            return "carbohydrate";
        case Role::fibre:
            return "fibre";
        case Role::protein:
            return "protein";
        case Role::fat:
            return "fat";
        default:
            return "";
    }
}

std::optional<CarbohydrateBasis> basis_of_title(const std::string& written) {
    const std::string title = lower_case(plain(written));
    if (holds(title, "available") || holds(title, "without fibre") ||
        holds(title, "without fiber")) {
        return CarbohydrateBasis::available;
    }
    if (holds(title, "total") || holds(title, "difference") || holds(title, "with fibre") ||
        holds(title, "with fiber")) {
        return CarbohydrateBasis::total;
    }
    return std::nullopt;
}

class TableReader {
  public:
    TableReader(RowSource& source, const std::string& name, const FoodTableOptions& options)
        : source_(source), name_(name), options_(options) {}

    tl::expected<FoodTableFile, std::string> read() {
        Row row;
        if (!titles(row)) {
            return wrong("no row of titles", "one above the foods");
        }
        if (const auto fault = find_columns()) {
            return tl::make_unexpected(*fault);
        }
        mark_ = options_.decimal_mark.value_or(mark_of_numbers());
        source_.rewind();
        titles(row);
        while (source_.next(row)) {
            take(row);
        }
        return std::move(file_);
    }

  private:
    RowSource& source_;
    const std::string& name_;
    const FoodTableOptions& options_;
    std::vector<std::string> titles_;
    std::map<std::size_t, const Column*> at_;  // by column, 0-based
    CarbohydrateBasis basis_ = CarbohydrateBasis::not_told;
    char mark_ = '.';
    FoodTableFile file_;

    tl::unexpected<std::string> wrong(const std::string& found, const std::string& expected) const {
        return tl::make_unexpected(name_ + ": found " + found + ", expected " + expected);
    }

    // The first row of two filled cells or more.
    bool titles(Row& row) {
        while (source_.next(row)) {
            titles_.clear();
            for (const Cell& cell : row.cells) {
                titles_.emplace_back(trimmed(cell.text));
            }
            const auto filled = std::count_if(titles_.begin(), titles_.end(),
                                              [](const std::string& one) { return !one.empty(); });
            if (filled >= 2) {
                return true;
            }
        }
        return false;
    }

    std::optional<std::size_t> place_of(const std::string& declared) const {
        for (std::size_t i = 0; i < titles_.size(); ++i) {
            if (titles_[i] == declared || std::to_string(i + 1) == declared) {
                return i;
            }
        }
        return std::nullopt;
    }

    std::optional<std::string> find_columns() {
        for (const std::string& one : options_.columns) {
            const std::size_t equals = one.find('=');
            const Column* column = column_called(one.substr(0, equals));
            const auto place =
                equals == std::string::npos ? std::nullopt : place_of(one.substr(equals + 1));
            if (column == nullptr || !place) {
                return name_ + ": found no such column as '" + one +
                       "', expected NAME=TITLE with a name such as food or carbohydrate and a "
                       "title "
                       "or number of this table";
            }
            at_[*place] = column;
        }
        for (std::size_t i = 0; i < titles_.size(); ++i) {
            const Column* column = column_called(meaning_of(titles_[i]));
            if (column != nullptr && !at_.contains(i) && !taken(*column)) {
                at_[i] = column;
            }
        }
        return missing();
    }

    // Energy is one column, in whichever unit.
    bool taken(const Column& column) const {
        return std::any_of(at_.begin(), at_.end(), [&](const auto& one) {
            const bool same_value = column.value != nullptr && one.second->value == column.value;
            return one.second == &column || same_value;
        });
    }

    std::optional<std::string> missing() {
        const bool nutrient = std::any_of(
            at_.begin(), at_.end(), [](const auto& one) { return one.second->value != nullptr; });
        if (!taken(*column_called("food")) || !nutrient) {
            return name_ + ": found no column of " + (nutrient ? "foods" : "nutrients") +
                   ", expected its title, or --column " +
                   (nutrient ? "food=TITLE" : "carbohydrate=TITLE");
        }
        for (const auto& [place, column] : at_) {
            if (column->name == "carbohydrate") {
                const auto basis = options_.basis ? options_.basis : basis_of_title(titles_[place]);
                if (!basis) {
                    return name_ +
                           ": found carbohydrate without saying whether its fibre is in "
                           "it, expected --total (it is) or --available (it is not)";
                }
                basis_ = *basis;
            }
            file_.taken_as.push_back(
                fmt::format("{}: column {}, '{}'{}", column->name, place + 1, titles_[place],
                            column->name != "carbohydrate"       ? ""
                            : basis_ == CarbohydrateBasis::total ? " (total, with fibre)"
                                                                 : " (available, without fibre)"));
        }
        return std::nullopt;
    }

    // Nothing here is above 999, so that a lone comma parts no thousands.
    char mark_of_numbers() {
        bool comma = false;
        bool point = false;
        for (Row row; source_.next(row);) {
            for (const auto& [place, column] : at_) {
                if (place >= row.cells.size() || column->value == nullptr) {
                    continue;
                }
                const MarkEvidence evidence = mark_evidence(trimmed(row.cells[place].text));
                comma = comma || evidence == MarkEvidence::comma ||
                        evidence == MarkEvidence::lone_comma;
                point = point || evidence == MarkEvidence::point;
            }
        }
        return comma && !point ? ',' : '.';
    }

    void tell(const Row& row, std::size_t place, const std::string& found,
              const std::string& expected) {
        file_.not_read.push_back(fmt::format("line {}, column {}: found {}, expected {}", row.line,
                                             place + 1, found, expected));
    }

    void take(const Row& row) {
        if (row.fault != RowFault::none) {
            tell(row, 0, "a quote that is not closed or a line too long", "a row of cells");
            return;
        }
        const bool blank = std::all_of(row.cells.begin(), row.cells.end(),
                                       [](const Cell& cell) { return trimmed(cell.text).empty(); });
        if (blank) {
            return;
        }
        FoodFacts food;
        food.portion = "100 g";
        food.portion_g = 100;
        food.basis = basis_;
        food.source = name_;
        for (const auto& [place, column] : at_) {
            if (place < row.cells.size()) {
                set(food, *column, std::string(trimmed(row.cells[place].text)), row, place);
            }
        }
        if (food.name.empty()) {
            tell(row, 0, "no food", "its name");
            return;
        }
        file_.foods.push_back(std::move(food));
    }

    void set(FoodFacts& food, const Column& column, const std::string& text, const Row& row,
             std::size_t place) {
        if (column.name == "food") {
            food.name = text;
        } else if (column.name == "portion" && !text.empty()) {
            food.portion = text;
        } else if (column.name == "source" && !text.empty()) {
            food.source = text;
        } else if (column.name == "portion_g") {
            const auto grams = number(text, 5000, row, place);
            food.portion_g = grams && *grams > 0 ? *grams : 100;
        } else if (column.value != nullptr) {
            if (const auto value = number(text, column.most, row, place)) {
                food.*column.value = *value * column.times;
            }
        }
    }

    std::optional<double> number(const std::string& text, double most, const Row& row,
                                 std::size_t place) {
        const std::string small = lower_case(plain(text));
        if (small.empty() || small == "-" || small == "n" || small == "n/a" || small == "na") {
            return std::nullopt;
        }
        if (small == "tr" || small == "trace" || small == "traces" || small == "sp") {
            return 0;
        }
        const auto found = written_number(small, mark_);
        const bool fits = found && (found->tail.empty() || found->tail == "g" ||
                                    found->tail == "kcal" || found->tail == "kj");
        if (!fits || found->value() < 0 || found->value() > most) {
            tell(row, place, "'" + text + "'",
                 fits ? fmt::format("0 to {:g}", most) : std::string("a number"));
            return std::nullopt;
        }
        return found->value();
    }
};

tl::expected<FoodTableFile, std::string> read(
    tl::expected<std::unique_ptr<RowSource>, FileError> source, const std::string& name,
    const FoodTableOptions& options) {
    if (!source) {
        return tl::make_unexpected(source.error().sentence());
    }
    return TableReader(**source, name, options).read();
}

}  // namespace

tl::expected<FoodTableFile, std::string> food_table_file(const std::string& path,
                                                         const FoodTableOptions& options) {
    return read(open_source(path, options.source), path, options);
}

tl::expected<FoodTableFile, std::string> food_table_bytes(std::string bytes,
                                                          const std::string& name,
                                                          const FoodTableOptions& options) {
    return read(open_source_bytes(std::move(bytes), name, options.source), name, options);
}

}  // namespace tracewright
