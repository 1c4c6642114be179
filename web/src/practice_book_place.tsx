import { BackupBox } from "./backup_box";
import { DeedList } from "./deed_list";
import { PlaceTitle } from "./place_title";
import { practiceBookWords as texts } from "./practice_book_words";
import { RecoveryKeyBox } from "./recovery_key_box";

/** Of the whole practice: its backups, its recovery key, and who did what. */
export function PracticeBookPlace() {
  return (
    <article class="review practice-book">
      <PlaceTitle text={texts.title} />
      <p>{texts.lead}</p>
      <BackupBox />
      <RecoveryKeyBox />
      <DeedList client={null} />
    </article>
  );
}
