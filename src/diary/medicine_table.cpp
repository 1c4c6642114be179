#include "diary/medicine_table.hpp"

#include "diary/medicine_table_text.hpp"
#include "diary/table_cells.hpp"

#include <algorithm>
#include <stdexcept>

namespace tracewright {

namespace {

// Without the titles and the empty row behind the last line end.
std::vector<std::vector<std::string>> rows_of(std::string_view csv) {
    auto rows = table_cells(csv);
    rows.erase(rows.begin());
    std::erase_if(rows, [](const auto& row) { return row.size() == 1; });
    return rows;
}

std::vector<std::string> split(const std::string& text, char mark) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find(mark, from), text.size());
        parts.push_back(text.substr(from, to - from));
        from = to + 1;
    }
    return parts;
}

// Whatever is not plainly told counts as the risky answer.
CausesLows causes_lows_of(const std::string& text) {
    return text == "no"          ? CausesLows::no
           : text == "only_with" ? CausesLows::only_with
           : text == "yes"       ? CausesLows::yes
                                 : CausesLows::unknown;
}

Medicine medicine_of(const std::vector<std::string>& row) {
    if (row.size() != 12) {
        throw std::logic_error("medicine-classes.csv: a row of other than 12 columns");
    }
    Medicine medicine;
    medicine.name = row[0];
    medicine.atc = row[1];
    medicine.medicine_class = row[2];
    medicine.components = split(row[3], ';');
    medicine.causes_lows = causes_lows_of(row[4]);
    medicine.sglt2 = row[5] != "no";
    medicine.glucose_lowering = row[6] != "no";
    medicine.raises_glucose = row[7] != "no";
    medicine.misleads_sensor = row[8] == "no"    ? MisleadsSensor::no
                               : row[8] == "yes" ? MisleadsSensor::yes
                                                 : MisleadsSensor::some;
    medicine.note = row[9];
    medicine.source = row[10];
    medicine.from_memory = row[11] != "yes";
    return medicine;
}

template <typename Is>
bool any_part(const Medicine& medicine, Is is) {
    const auto parts = parts_of(medicine);
    return std::any_of(parts.begin(), parts.end(), [&](const Medicine* part) { return is(*part); });
}

}  // namespace

bool Medicine::is_insulin() const {
    return any_part(*this, [](const Medicine& m) {
        return m.medicine_class == "insulin" || m.medicine_class.starts_with("insulin,");
    });
}

bool Medicine::is_secretagogue() const {
    return any_part(*this, [](const Medicine& m) {
        return m.medicine_class.find("sulfonylurea") != std::string::npos ||
               m.medicine_class == "glinide";
    });
}

bool Medicine::is_beta_blocker() const {
    return any_part(*this, [](const Medicine& m) { return m.medicine_class == "beta-blocker"; });
}

bool Medicine::lowers_blood_pressure() const {
    return any_part(*this, [](const Medicine& m) {
        for (const char* group : {"C02", "C03", "C07", "C08", "C09"}) {
            if (m.atc.find(group) != std::string::npos) {
                return true;
            }
        }
        return false;
    });
}

std::span<const Medicine> medicine_table() {
    static const std::vector<Medicine> table = [] {
        std::vector<Medicine> medicines;
        for (const auto& row : rows_of(medicine_classes_csv())) {
            medicines.push_back(medicine_of(row));
        }
        return medicines;
    }();
    return table;
}

std::span<const MedicineSpelling> medicine_spellings() {
    static const std::vector<MedicineSpelling> spellings = [] {
        std::vector<MedicineSpelling> all;
        for (const Medicine& medicine : medicine_table()) {
            all.push_back({medicine.name, medicine.name});
        }
        for (const auto& row : rows_of(medicine_names_csv())) {
            all.push_back({row.at(0), row.at(1)});
        }
        return all;
    }();
    return spellings;
}

const Medicine* medicine_named(std::string_view name) {
    const auto table = medicine_table();
    const auto found =
        std::find_if(table.begin(), table.end(), [&](const Medicine& m) { return m.name == name; });
    return found == table.end() ? nullptr : &*found;
}

std::vector<const Medicine*> parts_of(const Medicine& medicine) {
    std::vector<const Medicine*> parts;
    for (const std::string& component : medicine.components) {
        if (const Medicine* part = medicine_named(component)) {
            parts.push_back(part);
        }
    }
    if (parts.empty()) {
        parts.push_back(&medicine);
    }
    return parts;
}

}  // namespace tracewright
