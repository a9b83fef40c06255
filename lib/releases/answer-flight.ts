import { query } from '../access/service';
import { judgeFlight, type JudgedFlight } from './compose-flight';
import { answerFlightInput } from './schema';
import type { Answer } from '../rules/verdict';

/** The answer for a composed flight, as the desk shows it. */
export interface FlightAnswer {
  readonly aircraftId: string;
  readonly registration: string;
  readonly answer: Answer;
  readonly light: 'day' | 'night' | null;
  readonly betweenSunsetAndSunrise: boolean;
  readonly hire: boolean;
  readonly departAt: string;
  readonly arriveAt: string;
  readonly zone: string;
  readonly sunsetAt: string | null;
  readonly factsVersion: number;
  readonly rulesVersion: string;
  readonly answeredAt: string;
}

/** Answers a composed flight with the facts of this moment. Nothing is recorded. */
export const answerFlight = query({
  verb: 'flight.answer',
  input: answerFlightInput,
  async run(context, input) {
    return flightAnswerView(await judgeFlight(context, input), context.now);
  },
});

/** A judged flight as plain data for the screen. */
export function flightAnswerView(judged: JudgedFlight, now: Date): FlightAnswer {
  const { row, flight, use, answer } = judged;
  return {
    aircraftId: row.id,
    registration: row.registration,
    answer,
    light: use?.light ?? null,
    betweenSunsetAndSunrise: use?.betweenSunsetAndSunrise ?? false,
    hire: use?.hire ?? false,
    departAt: flight.departAt,
    arriveAt: flight.arriveAt,
    zone: flight.from.zone,
    sunsetAt: use?.sunsetAt ?? null,
    factsVersion: judged.factsVersion,
    rulesVersion: judged.rulesVersion,
    answeredAt: now.toISOString(),
  };
}
