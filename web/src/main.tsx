import { render } from "preact";
import { followAddress } from "./state/route.ts";
import { begin, followTickets } from "./state/session.ts";
import { followNetwork } from "./state/sender.ts";
import { followTheme } from "./state/theme.ts";
import { Page } from "./views/page.tsx";

followTheme();
followAddress();
followTickets();
followNetwork();
render(<Page />, document.body);
void begin();
