import { clientViewWords } from "./client_view_words";
import { connected } from "./live";
import { place } from "./place";
import { PlaceLink } from "./place_link";
import { session, signOut } from "./session";
import { turned, turnScreen } from "./turned_screen";
import { openWords } from "./words_panel_state";
import { words } from "./words";

export function TopBar() {
  const away = place.value.at !== "caseload";
  if (turned.value) {
    return (
      <header class="top">
        <span class="product">{words.product}</span>
        <button type="button" class="plain turn-back" onClick={() => turnScreen(false)}>
          {clientViewWords.back}
        </button>
      </header>
    );
  }
  return (
    <header class="top">
      <span class="product">{words.product}</span>
      {away && <PlaceLink to={{ at: "caseload" }}>{words.back}</PlaceLink>}
      <span class={connected.value ? "live" : "live lost"} role="status">
        {connected.value ? words.live.on : words.live.off}
      </span>
      {"client" in place.value && (
        <button type="button" class="plain" onClick={() => turnScreen(true)}>
          {clientViewWords.turn}
        </button>
      )}
      <button type="button" class="plain" onClick={() => openWords({ what: "keys" })}>
        {words.keys.open}
      </button>
      <span class="who">
        {session.value?.name}
        {session.value?.role === "reader" && ` ${words.mayLook}`}
      </span>
      <button type="button" class="plain" onClick={() => void signOut()}>
        {words.signOut}
      </button>
    </header>
  );
}
