#include "render/shared_page_html.hpp"

#include "render/paper_pages.hpp"
#include "render/review_figures.hpp"

namespace tracewright {

std::string shared_page_html(const SharedPage& page) {
    std::vector<Figure> figures;
    if (page.hours) {
        figures.push_back(hours_bar(*page.hours, 300));
    }
    if (page.sheets) {
        for (const ReviewDay& day : page.sheets->days) {
            figures.push_back(day_sheet(*page.sheets, day, UnderTheTrace::nothing));
        }
    }
    return paper_html(page.paper, figures);
}

}  // namespace tracewright
