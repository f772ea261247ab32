import { render } from "preact";
import { followAddress } from "./state/route.ts";
import { begin, followTickets } from "./state/session.ts";
import { followTheme } from "./state/theme.ts";
import { Page } from "./views/page.tsx";

followTheme();
followAddress();
followTickets();
render(<Page />, document.body);
void begin();
