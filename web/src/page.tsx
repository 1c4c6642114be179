import { render } from "preact";
import { App } from "./app";
import { followAddress } from "./place";
import { findSession } from "./session";
import "./styles/page.css";

followAddress();
void findSession();
const root = document.getElementById("page");
if (root) render(<App />, root);
