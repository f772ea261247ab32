import { listOf, objectOf, text, type Decoded } from "./decode.ts";

const equipment = objectOf({ id: text, name: text, kind: text });
export type Equipment = Decoded<typeof equipment>;
export const equipmentList = listOf(equipment);

const limit = objectOf({ id: text, name: text });
export type LimitKind = Decoded<typeof limit>;
export const limitKinds = listOf(limit);
