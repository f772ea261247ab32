import type { Axis } from "./axis.ts";
import { queuePath } from "./paths.ts";
import type { PlaceUse } from "../model/rehearsal.ts";
import { clockText } from "./words.ts";

const stripHeight = 30;

/** Whether anybody waits there worth drawing. */
const hasQueue = (place: PlaceUse): boolean => place.queue.length > 0 && place.queue_max_mean >= 0.1;

const queueWords = (place: PlaceUse): string =>
  `${place.name}, ${place.count}: up to ${place.queue_max_mean.toFixed(1)} wait, ${clockText(place.wait_mean_s)} each in all, ` +
  `${clockText(place.wait_p90_s)} or more for one in ten`;

/** A strip per place at which people wait; the places at which nobody does in one sentence. */
export function Queues({ places, axis }: { readonly places: readonly PlaceUse[]; readonly axis: Axis }) {
  const queues = places.filter(hasQueue);
  const free = places.filter((place) => !hasQueue(place));
  const most = Math.max(2, ...queues.map((place) => Math.max(...place.queue.map(([, waiting]) => waiting))));
  return (
    <div class="queues">
      {queues.map((place) => (
        <div key={place.place} class="lane queue" role="img" aria-label={queueWords(place)} title={queueWords(place)}>
          <span class="lane-name">
            {place.name} <small>{place.count}</small>
          </span>
          <svg width={axis.width} height={stripHeight} aria-hidden="true" focusable="false">
            {axis.ticks.map((second) => (
              <path key={second} d={`M${axis.at(second)} 0v${stripHeight}`} class="grid" />
            ))}
            <path d={queuePath(place.queue, axis, stripHeight - 1, most)} class="queue-shape" />
          </svg>
          <span class="lane-range">up to {place.queue_max_mean.toFixed(1)} wait</span>
        </div>
      ))}
      {free.length > 0 && (
        <p class="no-queue">Nobody waits at: {free.map((place) => `${place.name} (${place.count})`).join(", ")}.</p>
      )}
    </div>
  );
}
