import { answerCalendar } from '@/lib/feeds/calendar/answer-calendar';

/** What falls due, for a calendar program. The key stands in the address because such programs send no headers. */
export async function GET(_request: Request, { params }: { params: Promise<{ key: string }> }) {
  return answerCalendar((await params).key);
}
