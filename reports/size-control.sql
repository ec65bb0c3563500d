-- report:  size-control
-- title:   Size control
-- meaning: From the caliper readings on the sheets (`thick`): how far boards of one size and set-up stray along their length
--          and from one to the next, and what size would have to be set so that one reading in twenty is under what the
--          board must hold. That is its nominal thickness; of a size cut to less than it is called, for planing or drying, it is
--          the thickness of the mill file's target for the job, and where there is none, or that day's were of several
--          jobs, it has no size to hold here. The head saw sets thickness. What is cut over that is priced at what a board foot brought
--          on the year's invoices.
-- takes:   from to
-- example: size-control --period "this year"
-- worked:  size-control
-- input:   readings
SELECT t.day, t.shift, t.number, t.size, z.thickness, z.width, z.metric, t.mils, e.setup, e.kerf_mils, e.over_mils,
       e.metric AS setup_metric,
       (SELECT sum(y.wood) < sum(y.lumber) FROM v_tally_id y
        WHERE y.day = t.day AND y.shift = t.shift AND y.size_id = z.id) AS scant,
       (SELECT count(DISTINCT coalesce(r.job_id, 0)) FROM v_tally_id y
          JOIN v_run_id r ON r.day = y.day AND r.shift = y.shift AND r.run = y.run
        WHERE y.day = t.day AND y.shift = t.shift AND y.size_id = z.id) AS jobs,
       (SELECT max(j.code) FROM v_tally_id y
          JOIN v_run_id r ON r.day = y.day AND r.shift = y.shift AND r.run = y.run JOIN v_job j ON j.id = r.job_id
        WHERE y.day = t.day AND y.shift = t.shift AND y.size_id = z.id) AS job
FROM v_thickness t
JOIN v_size z ON z.label = t.size
LEFT JOIN v_setup_record e ON e.record = (SELECT max(b.record) FROM v_setup_record b
                                          WHERE b.record < (t.day * 16 + t.shift) * 1000000000 + t.number)
WHERE t.day BETWEEN :from AND :to
ORDER BY t.day, t.shift, t.number, t.reading;
-- input:   sawn
WITH newest AS (SELECT max(day) AS day FROM v_sheet WHERE day <= :to)
SELECT z.label AS size, sum(t.lumber) AS lumber
FROM v_tally_id t JOIN v_size z ON z.id = t.size_id, newest
WHERE t.day > newest.day - 365 AND t.day <= newest.day
GROUP BY t.size_id;
-- part:    lumber-price
-- table:   sizes | How far sizes stray
-- shows:   size text "Size"
-- shows:   setup text "Set-up"
-- shows:   boards count "Boards"
-- shows:   readings count "Readings"
-- shows:   mean micro:3 "Mean" unit-from=unit
-- shows:   within micro:4 "Along a board" unit-from=unit
-- shows:   board_means micro:4 "Board means" unit-from=unit
-- shows:   between micro:4 "Between boards" unit-from=unit
-- shows:   all_readings micro:4 "All readings" unit-from=unit
-- shows:   together micro:4 "Along and between" unit-from=unit
-- shows:   unit text "" hidden
-- note:    Standard deviations. Board means: of the boards' averages, which still holds some of what a board strays along its
--          length. Between boards: the variance component, that is what boards differ in beyond it. All readings: of every reading (the
--          total of EM 8731, 2000). Along and between: the root of the two components' squares.
-- empty:   no caliper readings in this period; a sheet has them board by board: thick 2x6 2.02 2.00 1.98 2.03
-- table:   targets | What to set
-- shows:   size text "Size"
-- shows:   setup text "Set-up"
-- shows:   must_hold micro:3 "Must hold" unit-from=unit
-- shows:   under_percent micro:1 "Readings under" unit="%"
-- shows:   set_for micro:3 "Set for" unit-from=unit
-- shows:   mean micro:3 "Mean" unit-from=unit
-- shows:   needed micro:3 "Needed" unit-from=unit
-- shows:   oversize micro:3 "Oversize" unit-from=unit
-- shows:   give_or_take micro:3 "Give or take" unit-from=unit
-- shows:   holds micro:3 "19 in 20 hold" unit-from=unit
-- shows:   wood_percent micro:1 "Of the wood" unit="%"
-- shows:   lumber lumber:0 "A year"
-- shows:   money micro "Worth a year" unit=money
-- shows:   verdict text "Verdict"
-- shows:   unit text "" hidden
-- note:    Needed: what it must hold + 1.645 x the spread of all readings (T. D. Brown, EM 8731, 2000; a normal spread). Give or take: two
--          standard errors of the oversize. Of the wood: oversize over mean and kerf. A year: more lumber from the same logs, over what was sawn of the size in the last 365
--          days; the most that can be had, since a log gives whole boards.
-- empty:   no caliper readings in this period
-- table:   boards | Control chart
-- shows:   board count "Board" total=none
-- shows:   day day "Day"
-- shows:   size text "Size"
-- shows:   setup text "Set-up"
-- shows:   off micro:4 "Off its size's mean" unit-from=unit
-- shows:   lower micro:4 "Lower limit" unit-from=unit
-- shows:   upper micro:4 "Upper limit" unit-from=unit
-- shows:   range micro:4 "Range" unit-from=unit
-- shows:   range_upper micro:4 "Range limit" unit-from=unit
-- shows:   remark text "Remark"
-- shows:   unit text "" hidden
-- picture: line across=board up=off,lower,upper title="Board means, off the mean of their size and set-up"
-- note:    Limits are three standard deviations of a board mean, from the mean range along boards of its size and set-up (X-bar and R; more than
--          ten readings: X-bar and s). A board outside was set differently from the others or lay differently. Run: eight boards or more on one side.
-- empty:   no size has two boards with two readings each
