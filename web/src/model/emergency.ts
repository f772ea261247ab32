import { objectOf, text } from "./decode.ts";

/** The card as the owner set it; an empty text: it was never set. */
export const emergencyCard = objectOf({ version: text, text });

/** What stands there until the owner has set a card: what to do anywhere, and that local rules come first. */
export const usualCard = [
  "Stop the piece. One coach stays with the person, one with the class.",
  "Call the emergency number of your country. Say where you are: address, entrance, floor.",
  "Send somebody to the door to meet the ambulance, and somebody for the defibrillator and the first-aid box.",
  "Give first aid as you were trained. Move nobody whose neck or back may be hurt unless they are in danger there.",
  "Afterwards write down what happened and when. Your gym's own plan and local rules come before this card.",
].join("\n");

/** The steps of a card: its lines, empty ones left out. */
export const stepsOf = (card: string): readonly string[] =>
  card
    .split("\n")
    .map((line) => line.trim())
    .filter(Boolean);
