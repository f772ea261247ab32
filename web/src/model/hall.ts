import { flag, listOf, number, objectOf, orElse, orNull, text, wordOf, type Decoded } from "./decode.ts";

const place = objectOf({ equipment: text, count: number });
export type Place = Decoded<typeof place>;

const kitLot = objectOf({
  equipment: text,
  kg: orNull(number),
  height_cm: orNull(number),
  size: orElse(text, ""),
  count: number,
});
export type KitLot = Decoded<typeof kitLot>;

export const shapes = ["out-and-back", "loop", "shuttle"] as const;

const route = objectOf({
  id: text,
  name: orElse(text, ""),
  lap_m: number,
  shape: wordOf(...shapes),
  dark_ok: flag,
  wet_ok: flag,
  indoor: flag,
  max_people: orNull(number),
  climb_m: orElse(number, 0),
  door_s: orElse(number, 0),
  use: orElse(text, ""),
  hazards: orElse(listOf(text), []),
});
export type Route = Decoded<typeof route>;

const quietHours = objectOf({ days: listOf(text), until: text, rule: text });

export const hall = objectOf({
  name: text,
  floor_m2: orNull(number),
  places: listOf(place),
  displacements: listOf(objectOf({ used: text, taken: text })),
  kit: listOf(kitLot),
  routes: listOf(route),
  quiet_hours: listOf(quietHours),
});
export type Hall = Decoded<typeof hall>;
export const keptHall = objectOf({ version: text, hall });
export type KeptHall = Decoded<typeof keptHall>;
