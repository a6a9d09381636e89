// The calendar of the order, kept up while it is in view.
import { useEffect } from 'preact/hooks';
import { CalendarPanel } from '../panels/CalendarPanel';
import { withTerms } from '../state/bill';
import * as c from '../state/calendar';
import * as s from '../state/store';
import '../style/selling.css';
import '../style/calendar.css';
import { useRoom } from './useRoom';

export default function Calendar() {
  const { ref, room } = useRoom<HTMLDivElement>();
  useEffect(() => {
    const stops = [c.followToday(), c.followCalendar()];
    return () => stops.forEach((stop) => stop());
  }, []);
  useEffect(() => {
    const el = ref.current;
    if (!el) return undefined;
    const watch = new IntersectionObserver((seen) => (c.inView.value = seen.some((e) => e.isIntersecting)));
    watch.observe(el);
    return () => watch.disconnect();
  }, []);
  const set = c.schedule.value;
  return (
    <div class="calendar" ref={ref}>
      <CalendarPanel
        set={set} usual={c.start.value} today={c.today.value} width={room.w} {...c.shown.value}
        onSet={c.change}
        onWay={(delivery) => s.change((p) => withTerms(p, { delivery }), `Delivery: ${delivery}`)}
        onSave={() => void c.saveCalendar()}
      />
    </div>
  );
}
