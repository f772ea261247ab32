import { ForecastStrip } from "../../charts/forecast_strip.tsx";
import { coverageWords, measureText, verdictOf } from "../../charts/forecast_words.ts";
import type { PastScore } from "../../model/brief.ts";
import { movementWords, shortDay } from "../../ui/words.ts";

const flagWords: Readonly<Record<string, string>> = { ill: "ill that day", hot: "a hot day", easy: "an easy day" };

function Line({ past }: { readonly past: PastScore }) {
  const { forecast } = past;
  const remarks = [flagWords[past.flag] ?? "", movementWords(past.version)].filter(Boolean).join("; ");
  return (
    <tr>
      <td class="roomy">{shortDay(past.date)}</td>
      <th scope="row">
        <div class="small soft tight-only">{shortDay(past.date)}</div>
        {past.title}
        {past.piece ? <span class="soft">{`, ${past.piece}`}</span> : null}
        {remarks ? <div class="small soft">{remarks}</div> : null}
      </th>
      <td class="number">
        <strong>{past.score}</strong>
        {forecast && past.days ? (
          <div class="small soft">
            {measureText(forecast, past.days[0])} – {measureText(forecast, past.days[1])}
          </div>
        ) : null}
      </td>
      <td class="number">
        {forecast ? `${measureText(forecast, forecast.p10)} – ${measureText(forecast, forecast.p90)}` : "–"}
      </td>
      <td class="roomy">
        <ForecastStrip past={past} />
      </td>
      <td>{verdictOf(past) ?? ""}</td>
      <td class="number roomy">{past.effort ?? ""}</td>
    </tr>
  );
}

/** Scores beside what a rehearsal with today's marks forecasts. */
export function History({ scores }: { readonly scores: readonly PastScore[] }) {
  if (scores.length === 0) return <p class="soft">No scores yet.</p>;
  const coverage = coverageWords(scores);
  return (
    <div class="stack">
      <p class="soft">
        {coverage ? `${coverage} ` : ""}
        Below each score: what the same body gives on four days in five. A change within it is luck of the day.
        The forecast is made with the marks that are known today; it has not learned from these scores.
      </p>
      <div class="wide" role="region" aria-label="Scores and forecasts" tabIndex={0}>
        <table class="history">
          <thead>
            <tr>
              <th scope="col" class="roomy">
                Day
              </th>
              <th scope="col">Board</th>
              <th scope="col" class="number">
                Score
              </th>
              <th scope="col" class="number">
                Forecast
              </th>
              <th scope="col" class="roomy">
                <span class="unseen">Picture</span>
              </th>
              <th scope="col">Was</th>
              <th scope="col" class="number roomy">
                Effort
              </th>
            </tr>
          </thead>
          <tbody>
            {scores.map((past, index) => (
              <Line key={index} past={past} />
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
