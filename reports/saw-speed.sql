-- report:  saw-speed
-- title:   Speed and bite of the saws
-- meaning: Rim speed is the saw's way round in a minute (3.1416 x diameter x turns), bite what each tooth takes at the feed of the
--          set-up in force at the end of the period. Time in wood is the length of all boards sawn over the feed that was in
--          force where they were sawn, against the day's sawing time.
-- takes:   from to
-- example: saw-speed --period season
-- worked:  saw-speed
-- input:   setup
SELECT kerf_mils, edger_mils, third_mils, feed_micro, tooth, metric FROM v_setup_record
WHERE day <= :to ORDER BY day DESC, shift DESC, number DESC LIMIT 1;
-- input:   cuts
WITH cut AS (
  SELECT day, shift, run, sum(lineal) AS lineal FROM v_tally_id
  WHERE day BETWEEN :from AND :to AND entry = 'sawn' GROUP BY day, shift, run)
SELECT c.day, c.lineal, e.feed_micro, e.metric
FROM cut c
  JOIN v_run_record x ON x.day = c.day AND x.shift = c.shift AND x.run = c.run
  LEFT JOIN v_setup_record e ON e.record = x.record
ORDER BY c.day, c.shift, c.run;
-- input:   sheets
SELECT day, sum(sawing_minutes) AS sawing FROM v_sheet
WHERE day BETWEEN :from AND :to GROUP BY day HAVING sum(sawing_minutes) > 0 OR sum(lines) > 0 ORDER BY day;
-- table:   saws | The saws
-- shows:   saw text "Saw"
-- shows:   diameter micro "Diameter" unit-from=unit
-- shows:   teeth count "Teeth" total=none
-- shows:   tooth text "Kind of tooth"
-- shows:   kerf micro "Kerf" unit-from=unit
-- shows:   rpm count "Turns a minute" total=none
-- shows:   rim_speed micro:0 "Rim speed" unit-from=speed_unit
-- shows:   feed micro "Feed" unit-from=feed_unit
-- shows:   bite micro "Bite" unit-from=unit
-- shows:   unit text "" hidden
-- shows:   speed_unit text "" hidden
-- shows:   feed_unit text "" hidden
-- note:    All saws are taken to be on one carriage, and so fed alike.
-- empty:   the mill file says nothing of its saws; a [[saw]] has role, diameter, kerf, teeth and rpm
-- table:   days | In wood
-- shows:   day day "Day"
-- shows:   boards lineal:0 "Boards sawn" total=sum
-- shows:   feed micro:1 "Feed" unit-from=feed_unit total=none
-- shows:   wood_hours fine-hours:2 "In wood" total=sum
-- shows:   sawing_hours fine-hours:2 "Sawing" total=none
-- shows:   wood_percent percent:0 "In wood" of=known_wood/known_sawing
-- shows:   known_wood fine-hours "" hidden
-- shows:   known_sawing fine-hours "" hidden
-- shows:   feed_unit text "" hidden
-- picture: bar across=day up=wood_hours,sawing_hours title="Hours in wood, of the hours sawn"
-- note:    Each board is taken to be one pass, so that head saw and edger both go once through its length. Passes that freed a
--          slab alone, and trim, are not counted: the saw was in wood at least so long. What 'less' or 'resaw' took off again
--          was sawn all the same. Feed: the mean of the day's boards; a dash where it is not known of all of them.
-- empty:   nothing sawn in this period
