import { render } from "preact";
import { followAddress } from "./state/route.ts";
import { begin } from "./state/session.ts";
import { followTheme } from "./state/theme.ts";
import { Page } from "./views/page.tsx";

followTheme();
followAddress();
render(<Page />, document.body);
void begin();
