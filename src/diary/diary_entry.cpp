#include "diary/diary_entry.hpp"

namespace tracewright {

const char* name_of(DiaryKind kind) {
    switch (kind) {
        case DiaryKind::meal:
            return "meal";
        case DiaryKind::movement:
            return "movement";
        case DiaryKind::sleep:
            return "sleep";
        case DiaryKind::mood:
            return "mood";
        case DiaryKind::medicine:
            return "medicine";
        case DiaryKind::finger_prick:
            return "finger-prick";
        case DiaryKind::ketones:
            return "ketones";
        case DiaryKind::lab:
            return "lab";
        case DiaryKind::alcohol:
            return "alcohol";
        case DiaryKind::illness:
            return "illness";
        case DiaryKind::symptom:
            return "symptom";
        case DiaryKind::sensor:
            return "sensor";
        case DiaryKind::note:
            return "note";
    }
    return "note";
}

}  // namespace tracewright
