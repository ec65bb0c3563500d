-- report:  tooth-life
-- title:   How long teeth last
-- meaning: A sharpening lasts from one work on the teeth of a saw to the next, a set from one full set to the next. Work that came for metal
--          or stone, and teeth still in the saw, are lives cut short: they lasted at least so long (Kaplan and Meier, 1958). What was sawn before
--          a saw's first work in the period is left out. A day's sawing hours are shared out by its lumber.
-- takes:   from to
-- example: tooth-life --period "this year"
-- worked:  tooth-life
-- input:   sawn
SELECT t.day, t.shift, t.number, s.code AS species, t.lumber, t.lineal
FROM v_tally_id t
LEFT JOIN v_run_id r ON r.day = t.day AND r.shift = t.shift AND r.run = t.run
LEFT JOIN v_species s ON s.id = r.species_id
WHERE t.day BETWEEN :from AND :to
ORDER BY t.day, t.shift, t.number;
-- input:   sheets
SELECT day, shift, sawing_minutes, lumber FROM v_sheet WHERE day BETWEEN :from AND :to ORDER BY day, shift;
-- input:   work
SELECT day, shift, number, saw, action, cause, teeth FROM v_tooth_work
WHERE day BETWEEN :from AND :to ORDER BY day, shift, number;
-- input:   rates
SELECT who AS saw, rate_micro AS rate FROM v_cost
WHERE per = 'tooth' AND (SELECT max(day) FROM v_sheet WHERE day <= :to) BETWEEN from_day AND to_day ORDER BY line;
-- input:   stops
SELECT count(*) AS times, sum(minutes) AS minutes FROM v_stop
WHERE day BETWEEN :from AND :to AND lower(cause) IN ('teeth', 'saw', 'sharpening');
-- input:   spent
SELECT c.per, sum(times_over(s.quantity, s.rate_micro, s.whole)) AS cost, sum(s.quantity) AS minutes
FROM v_spent s JOIN v_cost c ON c.line = s.line
WHERE c.per IN ('crew-hour', 'sawing-hour') AND s.day BETWEEN :from AND :to GROUP BY c.per;
-- table:   saws | By saw
-- shows:   life text "Life of"
-- shows:   saw text "Saw"
-- shows:   lives count "Lives" total=none
-- shows:   worn count "Worn" total=none
-- shows:   strikes count "Struck" total=none
-- shows:   running count "Still in" total=none
-- shows:   median_bf lumber:0 "Half last" total=none
-- shows:   lower lumber:0 "At least" total=none
-- shows:   upper lumber:0 "At most" total=none
-- shows:   shortest lumber:0 "Shortest worn" total=none
-- shows:   longest lumber:0 "Longest worn" total=none
-- shows:   median_hours micro:1 "The same in hours" unit=h total=none
-- shows:   median_lineal lineal:0 "The same in lineal" total=none
-- shows:   teeth count "Teeth put in" total=none
-- shows:   cost_per_mbf ratio:2 "Teeth cost per MBF" of=cost/lumber_bf per=mbf unit=money total=none
-- shows:   cost micro "" hidden
-- shows:   lumber_bf lumber "" hidden
-- note:    Teeth cost: those put in by work that ended a life, at the mill file's price of a tooth, over all lumber of these lives.
-- note:    Half last: the lumber after which half are worn, lives cut short allowed for; a dash where more than half outlast the record. At least, at
--          most: its limits, 95 in 100 (R. Brookmeyer and J. Crowley, 1982), of ten worn or more.
-- empty:   no lumber sawn since work on teeth in this period
-- table:   curve | Sharpenings that outlast
-- shows:   since_bf lumber:0 "Sawn since" total=none
-- shows:   head micro:0 "Head" unit="%" total=none
-- shows:   edger micro:0 "Edger" unit="%" total=none
-- shows:   other micro:0 "Other saws" unit="%" total=none
-- picture: line across=since_bf up=head,edger,other title="Sharpenings that last longer"
-- note:    Of a hundred sharpenings, how many are not worn after so much lumber.
-- empty:   no sharpening was worn in this period
-- table:   interval | What sharpening interval costs least
-- shows:   saw text "Saw"
-- shows:   worn count "Worn" total=none
-- shows:   planned micro:2 "One by plan" unit=money total=none
-- shows:   forced micro:2 "One when dull" unit=money total=none
-- shows:   mean_bf lumber:0 "Mean interval" total=none
-- shows:   today_per_mbf ratio:2 "Costs now" of=forced/mean_bf per=mbf unit=money total=none
-- shows:   best_bf lumber:0 "Best interval" total=none
-- shows:   best_per_mbf ratio:2 "Costs then" of=best_cost/thousand_bf per=mbf unit=money total=none
-- shows:   as_planned micro:0 "Reached" unit="%" total=none
-- shows:   verdict text "Verdict"
-- shows:   best_cost micro "" hidden
-- shows:   thousand_bf lumber "" hidden
-- note:    Age replacement (R. E. Barlow and F. Proschan, 1965, from memory). Taken for granted: every sharpening for wear was
--          forced by dull teeth and stopped the mill as long as a stop for teeth does on average, at what the crew and the mill cost for
--          an hour of sawing; by plan one hand does it in the same time while the mill stands anyway, at the mean cost of a crew
--          hour. Either puts in as many teeth as one for wear did on average. Strikes come at any interval and are not in the
--          cost. Slower sawing with dull teeth is not in it either: see the last table.
-- note:    Mean interval: over all sharpenings, lives cut short allowed for, up to the longest of them. Costs now: every one when dull, at that
--          interval. Reached: of a hundred at the best interval, how many come by plan; the rest are dull before it. With few
--          sharpenings the best interval moves much from one record to the next.
-- empty:   no lumber sawn since work on teeth in this period
-- table:   species | By species most sawn
-- shows:   saw text "Saw"
-- shows:   species text "Species"
-- shows:   lives count "Lives" total=none
-- shows:   worn count "Worn" total=none
-- shows:   strikes count "Struck" total=none
-- shows:   median_bf lumber:0 "Half last" total=none
-- shows:   lower lumber:0 "At least" total=none
-- shows:   upper lumber:0 "At most" total=none
-- note:    Of sharpenings; each counts for the species of which most was sawn meanwhile.
-- empty:   no lumber sawn since work on teeth in this period
-- table:   causes | By cause
-- shows:   saw text "Saw"
-- shows:   cause text "Cause"
-- shows:   times count "Times" total=sum
-- shows:   teeth count "Teeth put in" total=sum
-- shows:   mean_bf ratio:0 "Sawn before, on average" of=lumber_bf/times total=none
-- shows:   lumber_bf lumber "" hidden
-- note:    What ended sharpenings. Without a cause: touched up or changed in the usual way.
-- empty:   no sharpening ended in this period
-- table:   compared | Do some last longer?
-- shows:   what text "Compared"
-- shows:   groups text "Sharpenings of"
-- shows:   worn count "Worn" total=none
-- shows:   chi_square micro:2 "Chi-square"
-- shows:   freedom count "Freedom" total=none
-- shows:   p micro:3 "By chance"
-- shows:   verdict text "Verdict"
-- note:    Log-rank test. By chance: how often lives that last alike would differ as much. A saw or species counts with ten worn or more (common practice, no source).
-- empty:   nothing to compare: sharpenings of one saw and one species
-- table:   pace | Does the mill slow as teeth dull?
-- shows:   day day "Day"
-- shows:   since_bf lumber:0 "Sawn since sharpened" total=none
-- shows:   bf_per_hour ratio:0 "bf per sawing hour" of=lumber/sawing total=none
-- shows:   lumber lumber "" hidden
-- shows:   sawing hours "" hidden
-- picture: scatter across=since_bf up=bf_per_hour trend title="Pace and lumber since the head saw was sharpened"
-- empty:   no day with sawing time since work on the head saw
-- foot:    Before any work on teeth or blades: power locked out, as the mill's manual and local safety rules say.
