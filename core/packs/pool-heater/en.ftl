# The pack 'pool heater' in English. The keys are named in core/src/procedure/pack.rs.

pack = Pool heat pump
    .name = Yearly service of a pool heat pump

## Questions

condition-first-service = Is this the first service of this unit?
condition-first-service-yes = Yes, the first
condition-first-service-no = No

condition-coil = How are the fins of the air coil?
condition-coil-plain = Plain metal
condition-coil-coated = Coated (coloured, or the maker says so)

condition-sea = Does salt reach the unit?
condition-sea-near = Yes: the sea is near, or a salt pool splashes
condition-sea-far = No

condition-exchanger = Descaling the exchanger: what is it made of?
condition-exchanger-titanium = Titanium, and the maker allows acid
condition-exchanger-cupronickel = Cupronickel, and the maker allows acid
condition-exchanger-no-acid = Not known, or acid is forbidden: flush only
condition-exchanger-not-due = Descaling is not due: flush only

condition-descaler = Which acid is in the descaler?
condition-descaler-citric = Citric
condition-descaler-phosphoric = Phosphoric
condition-descaler-sulfamic = Sulfamic
condition-descaler-hydrochloric = Hydrochloric

condition-season = What comes after this service?
condition-season-runs = The pool is used: it runs
condition-season-winter = Winter: it stays drained and off

condition-certificate = Do you hold the certificate for this refrigerant circuit?
condition-certificate-yes = Yes, and it is valid
condition-certificate-no = No: the circuit stays shut

## Instruments

instrument-air-thermometer = Air thermometer
instrument-pipe-thermometer = Pipe clamp thermometer
instrument-flow-meter = Flow meter
instrument-power-meter = Power meter
instrument-ph-meter = pH meter
instrument-conductivity-meter = Conductivity meter
instrument-hardness-kit = Hardness test kit
instrument-alkalinity-kit = Alkalinity test kit
instrument-insulation-tester = Insulation tester
instrument-capacitance-meter = Capacitance meter
instrument-low-side-gauge = Gauge of the low side
instrument-high-side-gauge = Gauge of the high side
instrument-chlorine-kit = Chlorine test kit

## Readings

reading-serial = Serial number of the unit
    .hint = Copy it from the nameplate, letter by letter.
reading-controller-serial = Serial number of the controller
    .hint = On the controller's back or in its info menu.
reading-hours = Running hours of the compressor
    .hint = From the controller, if it counts them.
reading-pool-ph = pH of the pool
    .hint = Mostly 7.0 to 7.6. Low pH eats the exchanger, whatever else is done.
reading-pool-chlorine = Free chlorine in the pool, mg/L
    .hint = From the pool itself, not beside the inlet.
reading-pool-conductivity = Conductivity of the pool
    .hint = If you have the meter. It tells a salt pool.
reading-air-on-found = Air on to the coil, as found
    .hint = In the shade, a hand's width before the fins.
reading-air-off-found = Air off the fan, as found
    .hint = In the middle of the air stream, outside of the guard.
reading-water-in-found = Water into the unit, as found
    .hint = Clamp on bare pipe, lagging over it.
reading-water-out-found = Water out of the unit, as found
    .hint = Clamp on bare pipe, lagging over it.
reading-flow-found = Pool water through the unit, as found
    .hint = Built-in or clamp-on meter: of the unit, not of the whole filter. 6 m³/h is 100 L/min.
reading-power-found = Power taken, as found
    .hint = Compressor and fan, steady, without the pool's pump.
reading-low-pressure-found = Pressure of the low side, as found
    .hint = Above the atmosphere. Only if you are certified and it has a port. Sealed: leave it empty.
reading-high-pressure-found = Pressure of the high side, as found
    .hint = Above the atmosphere. Only if you are certified and it has a port. Sealed: leave it empty.
reading-suction-line-found = Suction pipe, as found
    .hint = Clamp on bare pipe before the compressor, lagging over it.
reading-discharge-line-found = Discharge pipe, as found
    .hint = Clamp a hand's width after the compressor. Hot: do not touch the pipe.
reading-liquid-line-found = Liquid pipe, as found
    .hint = Clamp on bare pipe after the exchanger, before the expansion.
reading-loop-temperature = Temperature of the exchanger before opening
    .hint = The hotter of the two pipes. Above 30 °C (86 °F): wait.
reading-supply-ph = pH of the supply water
    .hint = The water that you fill with. The rinse is judged by it.
reading-supply-conductivity = Conductivity of the supply water
    .hint = If you have the meter. The rinse is judged by it.
reading-supply-hardness = Hardness of the supply water
    .hint = As calcium carbonate. Tells when descaling is next due.
reading-supply-alkalinity = Alkalinity of the supply water
    .hint = As calcium carbonate, if you have the kit. With it the scaling index can be told.
reading-flush-chlorine = Free chlorine in the flush water, mg/L
    .hint = As it leaves the exchanger. More than in the fresh water: flush on, no acid.
reading-cleaner-parts = Parts of water to 1 part of cleaner
    .hint = From the label of the cleaner in your hand.
reading-cleaner-percent = Cleaner in the ready mix, percent
    .hint = Only if the label says it so: the share of the whole.
reading-cleaner-dose = Cleaner to one litre of water
    .hint = Only if the label says it so: mL to 1 L, or fl oz to 1 US gal.
reading-cleaner-volume = Cleaner wanted in all
    .hint = Enough to wet every fin once.
reading-descaler-parts = Parts of water to 1 part of descaler
    .hint = From the label of the descaler in your hand.
reading-descaler-percent = Descaler in the ready mix, percent
    .hint = Only if the label says it so: the share of the whole.
reading-descaler-dose = Descaler to one litre of water
    .hint = Only if the label says it so: mL to 1 L, or fl oz to 1 US gal.
reading-descaler-volume = Descaler mix wanted in all
    .hint = Fills exchanger, hoses and the bucket above the pump.
reading-acid-ph-early = pH of the acid mix after five minutes
    .hint = Strip or meter, gloves on.
reading-acid-ph-end = pH of the acid mix at the end
    .hint = Equal twice, two minutes apart: steady.
reading-bucket-ph = pH of the neutralised bucket
    .hint = Stir, wait until it stops rising. Local rules say what may go down the drain.
reading-neutraliser-parts = Parts of water to 1 part of neutraliser
    .hint = From the label. Bicarbonate powder: measures by volume.
reading-neutraliser-percent = Neutraliser in the ready mix, percent
    .hint = Only if the label says it so: the share of the whole.
reading-neutraliser-dose = Neutraliser to one litre of water
    .hint = Only if the label says it so: a powder in grams.
reading-neutraliser-volume = Neutraliser wanted in all
    .hint = Fills exchanger, hoses and the bucket above the pump.
reading-rinse-ph = pH of the rinse water
    .hint = As it leaves the exchanger. It must equal the fresh water's.
reading-rinse-conductivity = Conductivity of the rinse water
    .hint = As it leaves the exchanger. It must equal the fresh water's.
reading-insulation = Insulation resistance to earth
    .hint = The lowest value. Low readings with refrigerant in the oil are common: run and test again.
reading-winding-temperature = Temperature of the winding
    .hint = Clamp on the compressor's shell. For comparing with other years.
reading-capacitance = Capacitance of the run capacitor
    .hint = Discharged first, one lead off. Compare with its label.
reading-capacitance-label = Label of the run capacitor
    .hint = The value printed on it, in µF.
reading-air-on-left = Air on to the coil, as left
    .hint = Same place as before.
reading-air-off-left = Air off the fan, as left
    .hint = Same place as before.
reading-water-in-left = Water into the unit, as left
    .hint = Same clamp, same place.
reading-water-out-left = Water out of the unit, as left
    .hint = Same clamp, same place.
reading-flow-left = Water flow, as left
    .hint = Same meter, same place.
reading-power-left = Power taken, as left
    .hint = Compressor and fan, steady, without the pool's pump.
reading-low-pressure-left = Pressure of the low side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-high-pressure-left = Pressure of the high side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-suction-line-left = Suction pipe, as left
    .hint = Same clamp, same place.
reading-discharge-line-left = Discharge pipe, as left
    .hint = Same clamp, same place. Hot: do not touch the pipe.
reading-liquid-line-left = Liquid pipe, as left
    .hint = Same clamp, same place.

## Photographs

shot-casing-before = The unit before the work
    .show = The whole unit, its place and what stands around it. Shows how you found it.
shot-nameplate = Nameplate
    .show = Every line readable: model, refrigerant, pressures, current.
shot-serial-plate = Serial number
    .show = The serial number alone, close and sharp. Proves which unit it was.
shot-controller-plate = Controller's serial number
    .show = The number on the controller or in its menu.
shot-settings-before = Settings as found
    .show = The display with set point, mode and timer. They go back to these.
shot-dosing-off = Chlorinator and dosing off
    .show = Their switches off and locked, the canisters shut.
shot-tag = Lock and tag
    .show = The isolator off, with your lock and tag on it.
shot-wiring-before = Wiring before the work
    .show = Terminals and plugs before you touch them. It shows where each wire goes.
shot-coil-before = Air coil before
    .show = The whole coil, square on, then hold this place for the picture after.
shot-coating = Coating of the fins
    .show = A hand's width of fins, close. Shows whether the coating is whole.
shot-coil-after = Air coil after
    .show = The same view as before, rinsed. You see light through clean fins.
shot-loop-connected = Service pump connected
    .show = The shut bypass valves, both hoses, pump and bucket in one picture.
shot-rinse-proof = Proof of the rinse
    .show = The meters in the rinse water, values readable.
shot-bypass = Bypass valves
    .show = All three valves with their levers. Shows how they stand now.
shot-drained = Drained for winter
    .show = The open drain, the unions and the shut bypass valves.
shot-wiring-after = Wiring after the work
    .show = The same view as before: dry, every plug in, every wire back.
shot-mounting = Feet, bolts and pipes
    .show = Feet, bolts, anti-vibration mounts and where pipes and cables enter.
shot-salt = Fastenings after salt care
    .show = Bolts, brackets and seams: the rust found, and the protection on it.
shot-casing-after = The unit after the work
    .show = The same view as before: closed, clean, nothing left behind.
shot-display-left = Display while running
    .show = The unit running, with no fault shown.
shot-settings-after = Settings as left
    .show = The same display as before. Each value as found.

## What comes along

chemical-degreaser = Degreaser for plain coils
chemical-neutral-cleaner = pH-neutral coil cleaner
chemical-descaler = Descaler that the exchanger's maker allows
chemical-neutraliser = Sodium bicarbonate
part-mount = Anti-vibration mount
part-cable-seal = Seal for a cable entry
part-drain-seal = Seal for drain and unions
part-flow-switch = Flow switch
gear-detector = Refrigerant detector
gear-lock-and-tag = Lock and tag
gear-voltage-tester = Two-pole voltage tester
gear-goggles = Goggles
gear-face-shield = Face shield
gear-chemical-gloves = Long chemical gloves
gear-apron = Chemical apron
gear-eyewash = Eyewash
gear-spray-covers = Bags and tape for the electrics
gear-brush = Soft brush
gear-sprayer = Low-pressure sprayer
gear-bucket = Two buckets
gear-service-pump = Service pump with hoses, on a residual-current device
gear-spill-kit = Spill kit
gear-pipe-clamps = Pipe clamp thermometers
gear-gauges = Gauges for this refrigerant
gear-chlorine-kit = Chlorine test kit

## Dilutions

mix-degreaser = Coil cleaner for plain fins
    .concentrate = Degreaser for coils
    .water = Clean water
    .order-1 = Water into the sprayer.
    .order-2 = Then the cleaner, slowly.
    .order-3 = Close and swing gently. Never mix it with anything else.
    .gear = Goggles, long chemical gloves, apron. The label comes first.
mix-neutral-cleaner = Neutral cleaner for coated fins
    .concentrate = pH-neutral coil cleaner
    .water = Clean water
    .order-1 = Water into the sprayer.
    .order-2 = Then the cleaner.
    .order-3 = Close and swing gently.
    .gear = Goggles and gloves. The label comes first.
mix-descaler = Descaler
    .concentrate = Descaler that the exchanger's maker allows
    .water = Fresh water, already in bucket and exchanger
    .order-1 = Fresh water first, never pool water: measure what is in bucket and exchanger.
    .order-2 = Then the acid, slowly, into the water. Never water into acid.
    .order-3 = Stir gently, face away. A smell of chlorine: leave it, go, fresh air.
    .gear = Goggles and face shield, long chemical gloves, apron, eyewash in reach. The label comes first.
mix-neutraliser = Neutraliser
    .concentrate = Sodium bicarbonate (baking soda) or the maker's neutraliser
    .water = Clean water
    .order-1 = Water into the rinsed bucket.
    .order-2 = Then the powder, a spoon at a time: it fizzes with acid left over.
    .order-3 = Stir until it has dissolved.
    .gear = Goggles and gloves. The label comes first. Never caustic soda.

## Settings

excursion-schedule = Timer and mode
    .why = So that unit and pool pump run when you measure, and a programme does not start them.
excursion-set-point = Pool set point
    .why = Lowered so that the unit does not call for heat at once when power comes back.
excursion-dosing = Chlorinator and dosing
    .why = Off for the work: with acid they make chlorine gas, and without flow they fill the pipe.

## Arrive and make safe

phase-arrive = Arrive and make safe
    .owner = We looked at the place and made it safe to work.
    .matters = A safe start keeps people, the house and the machine from harm.

step-approach = Look, smell, and read the detector first
    .why = Escaped refrigerant can burn; a plant room can hold chlorine.
    .how = Air the plant room before you go in. Smell of chlorine: stay out, air it, call the pool's keeper. If the refrigerant can burn (R290, R32): detector first, low down; phone, torch and vacuum cleaner stay away until it reads clear. Any alarm: go back, keep sparks away, air the place, call the certified person.

step-fit-to-run = See that it is fit to run
    .why = A damp, damaged or leaking unit must not run, least of all beside a pool.
    .how = Whole, dry, covers and fan guard on. Bypass set so that water goes through the unit, pool pump fit, residual-current device there. Damp, damaged, leaking or dead: leave this step out and say why.

## Identify

phase-identify = Identify the unit
    .owner = We made sure that it was your machine, and wrote down its numbers.
    .matters = The right numbers keep your warranty and your history straight.

step-right-unit = Prove that it is the right unit
    .why = The record and the warranty hold for this serial number only.
    .how = Compare the serial number with the job. If it is another: stop and ask the office.

step-know-unit = Answer what kind of unit it is
    .why = The answers decide which steps come. A wrong cleaner or acid can ruin the unit.
    .how = Look at plate and manual: metal of the exchanger, what the maker says of acid. Not known: flush only.

## As found

phase-as-found = As found
    .owner = We measured how the machine ran before we touched it.
    .matters = Only numbers from before and after show what the service did.

step-pool-water = Test the pool's water
    .why = Most exchangers of pools are killed by the water: sour, or dosed right before them.
    .how = Sample at arm's depth. Look where chlorine and acid are dosed: it must be after the unit, with a non-return valve between. Before it: a finding.

step-settings-found = Note the settings, then set the timer to manual
    .why = Timers and modes must go back exactly as the owner had them.
    .how = Photograph every page first. Write down the value you find and the one you set.

step-settings-noted = Note the settings
    .why = In spring they go back to what the owner had.
    .how = Photograph every page.

step-run-found = Run it until it is steady
    .why = Readings mean something only when the running is settled.
    .how = Filter pump on, backwash done, a quarter of an hour, no defrost. Listen for fan and compressor. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-read-found = Take the readings as found
    .why = The same readings are taken again at the end.
    .how = All of them within a few minutes. Mark where the clamps sit: they come back to the same place.

step-gauges-found = Gauges only where they may be opened: as found
    .why = Clamps tell most of it. Each time gauges go on, a sealed unit loses some of its charge.
    .how = Only with ports, with gauges rated for this refrigerant, and if the clamps leave a question. Short hoses, goggles, gloves. Detector on for R290 and R32. Sealed: leave this step out.

## Isolate and strip

phase-isolate = Isolate and open
    .owner = We switched the power off, locked it and tested that it was off.
    .matters = Nobody can be hurt by a machine that cannot start.

step-lower-set-point = Lower the pool set point and stop the unit
    .why = When power comes back it must not start heating before you are ready.
    .how = Write down the value first. Let the fan run down, the pool pump a few minutes longer.

step-dosing-off = Chlorinator and dosing off, locked, noted
    .why = Chlorine and acid make a poisonous gas; a chlorinator without flow fills the pipe with gas that burns.
    .how = Write down output and times first. Off at their own switches, your lock on them, canisters of chlorine and of acid shut and apart. No pool chemicals within reach of your bucket.

step-dosing-off-winter = Chlorinator and dosing off for the winter
    .why = Chlorine and acid make a poisonous gas; a chlorinator without flow fills the pipe with gas that burns.
    .how = Off at their own switches, your lock on them, canisters of chlorine and of acid shut and apart. No pool chemicals within reach of your bucket. The cell goes home with the owner, by its maker.

step-lock-off = Switch every supply off, lock it, tag it
    .why = Off is not isolated, and beside a pool you stand in the wet.
    .how = The unit, the pool pump, the timer, the chlorinator, the dosing pumps, lights on the same board: find them all. Your lock, your tag, your key in your pocket. The licensed person decides where local codes say so.

step-wait-charge = Wait until the charge has gone
    .why = Capacitors and drives stay charged after the power is off.
    .how = The time on the maker's label comes first. Keep the covers on.
    .then = The covers still stay on: test for dead next.

step-test-dead = Prove the tester, then test that it is dead
    .why = An isolator can fail, and a tester can too.
    .how = Tester on a known live source: it shows. Then every pole to every pole and to earth, at each isolator's outgoing side or behind its terminal lid. Then every further supply. Work as if it were live.

step-prove-tester = Prove the tester again
    .why = A tester that died in between would show 'dead' on a live wire.
    .how = Same live source as before. It must show again. If not: the test does not count.

step-covers-off = Take covers and fan guard off
    .why = The coil and the exchanger are cleaned from inside as well.
    .how = Photograph the wiring first. Keep the screws apart. Mind sharp edges and hot pipes. Do not loosen any refrigerant fitting.

## Air coil

phase-air-coil = Clean the air coil
    .owner = We cleaned the fins that take warmth out of the air.
    .matters = Clean fins take in more warmth, so the machine uses less power.

step-cover-electrics = Cover the electrics against spray
    .why = Water in terminals and boards causes faults and shocks, even days later.
    .how = Bag the board, the terminals, the motor and the plugs. Tape the bags open side down.

step-brush-coil = Gear on, feel the coil cold, brush it dry
    .why = Wet dirt turns to mud between the fins; spray on a hot part splashes and warps it.
    .how = Goggles, gloves, long sleeves, mask. Coil and compressor must be hand-cold. Photograph, then soft brush along the fins. Vacuum the rest only where the refrigerant cannot burn. No brush across the fins.

step-mix-degreaser = Mix the coil cleaner for plain fins
    .why = Too strong eats the fins; too weak leaves the grease.
    .how = Many degreasers are alkaline: keep them away from the descaler and every acid.

step-mix-neutral = Look at the coating, mix the neutral cleaner
    .why = Alkali and acid lift the coating; after that the fins rot.
    .how = Photograph the coating. Blisters or bare spots are a finding. Only a pH-neutral cleaner that the coating's maker allows.

step-soak-coil = Spray the cleaner on and let it soak
    .why = The cleaner needs time to loosen what the brush left.
    .how = Low pressure, from the bottom up so that it does not streak. It must not dry: in sun and wind do one half at a time.
    .then = Rinse at once, before it dries.

step-rinse-coil = Rinse the coil, top to bottom
    .why = Bent fins block the air; cleaner left behind eats them, and alkali must not meet acid later.
    .how = Low pressure, lance square to the fins, 100 mm (4 in) away, moving only along them. Against the airflow, from inside out, where you can. Go on until no foam comes; then the drain pan, its outlet, sprayer and bucket. Get rid of the run-off by local rules.

step-rinse-salt = Rinse the salt off casing, base and brackets
    .why = Salt eats metal the whole year, most where the rain does not reach.
    .how = Fresh water, low pressure, electrics still covered. Behind the coil, under the base, all brackets.

## Exchanger

phase-exchanger = Clean the exchanger
    .owner = We cleaned the part that gives the warmth to your pool, and rinsed it until the rinse matched fresh water.
    .matters = Scale costs power and shortens the life of the machine.

step-gear-on = Gear on, eyewash in reach
    .why = Splashes come without warning, and the first seconds count.
    .how = Goggles and face shield, long chemical gloves, apron, closed shoes. Eyewash open in reach, not in the van. Fresh air through the place.

step-shut-valves = Set the bypass: unit shut off
    .why = Pool water must not meet acid, and acid not the pool.
    .how = Both valves to the unit shut, the middle one open. Pool pump and heating stay locked out. Photograph the levers. Measure both pipes. Above 30 °C (86 °F): wait.

step-leak-test = Open the drain, see that no more comes
    .why = A valve that passes brings chlorine to the acid, or acid into the pool.
    .how = Drain plug and upper union open slowly, face away, into a bucket. Let it run out. Then watch: the pool's water still stands at the valves.
    .then = No drop in two minutes: the valves hold. A drip: do not use acid; the valve is a finding.

step-connect-loop = Connect the service pump
    .why = With the unit dead only your own pump can move the water.
    .how = Bucket, pump, lower port in, upper port back into the bucket, return open to the air. Pump on a residual-current device. Fill the bucket with an air gap or through backflow protection, never with a hose hanging in it.

step-flush-chlorine = Flush with fresh water until no chlorine is left
    .why = What is left of the pool water makes chlorine gas with acid.
    .how = Fresh water through, to the waste, three times the content at least. Test the fresh water, then what comes out: no more chlorine than in the fresh water. Rinse bucket, pump and hoses too. Then fill, measuring the water, let the air out and stop the pump.

step-match-descaler = Match the descaler with the exchanger
    .why = The wrong acid eats the metal; acid with chlorine or alkali makes poisonous gas.
    .how = Label and maker must allow this metal. Say which acid it is. Never the pool's own acid, never hydrochloric where stainless steel is in the way: shafts, sensor pockets, springs. All alkaline cleaner rinsed away, chlorine measured gone. In doubt: no acid, correct the answer and flush only.

step-add-acid = Pour the acid slowly into the water
    .why = Water poured into acid boils up and spits.
    .how = A little at a time, into the bucket, pump stopped. Stir, wait for the fizz, go on. Follow the label and what the maker says.

step-circulate-acid = Circulate until the fizz stops
    .why = It is done when no more gas comes and the pH is steady, not when the clock says so.
    .how = Stay with it, and write the finish time on the bucket. Measure the pH after five minutes and at the end. Only if the label allows: top up with a little acid when it is spent. Never past the longest time.
    .then = No fizz, and twice the same pH: stop the pump. Still fizzing at the longest time: stop too, and neutralise.

step-neutralise-bucket = Drain into the bucket and neutralise slowly
    .why = Spent acid still burns, and it foams up when it is neutralised too fast.
    .how = Drain loop and hoses into the bucket. Bicarbonate (never caustic soda) a spoon at a time; stir and wait for the foam. Go on until it fizzes no more and the pH is near 7. Get rid of it by local rules, never into a storm drain; rinse the bucket.

step-neutralise-loop = Circulate the neutraliser
    .why = It takes away the acid left in the exchanger and the hoses.
    .how = Mix it, fill, run the pump. The return stays open: gas must get out.
    .then = Stop the pump, drain loop and hoses, get rid of it by local rules, rinse the bucket.

step-rinse-loop = Rinse the exchanger with fresh water
    .why = Acid left behind makes gas when the chlorine of the pool comes back.
    .how = Fresh water through, to the waste, three buckets at least, both ways. Air gap or backflow protection as before. Then stop the pump.

step-prove-rinse = Prove the rinse against the fresh water
    .why = Eyes and nose cannot tell. Equal pH or conductivity can.
    .how = Measure at the end of the return hose. Equal to the fresh water within what your meter can tell? If not: rinse again and measure again.

step-flush-loop = Open the bypass; the first water to the waste
    .why = Pool water takes the last of the rinse with it.
    .how = Drain still open. Open the valve from the filter slowly: twice the content to the waste. Then the valve to the pool. See that no air is left.

step-close-ports = Close drain and unions, pack the chemicals
    .why = A weeping union wets the electrics; acid beside pool chlorine makes gas.
    .how = New seals, hand-tight: the shell is plastic. Joints dry. Acid, alkali and chlorine apart, lids shut, nothing left in the plant room. Wash the gloves, then take the gear off.

step-winter-drain = Drain it for the winter
    .why = Water left in the shell freezes and bursts it.
    .how = Drain and unions open, blow through with low pressure, hoses off. Bypass valves stay shut, the drain stays open, its plug tied to the unit. Pack the chemicals apart, wash the gloves, then take the gear off.

## Electrics

phase-electrics = Check the electrics
    .owner = We checked the wiring, looked for damp and tested the safety wire.
    .matters = Dry, tight wiring is safe wiring.

step-look-damp = Uncover the electrics and look for damp
    .why = Power on damp parts gives faults, fire and shocks.
    .how = Take the bags off without spilling. Look under boards and into plugs. Damp: wipe, warm dry air, wait, look again. Only dry counts.

step-unplug-electronics = Unplug the electronics for the insulation test
    .why = The test voltage kills boards, drives and sensors.
    .how = Only where the maker allows the test. Otherwise leave both steps out and say why. Board, drive, sensors: each plug marked.

step-insulation-test = Test the insulation
    .why = A weak winding or cable is found before it fails or shocks.
    .how = The maker's voltage, all live poles together to earth, never with the compressor under vacuum. Discharge after the test. A low value with refrigerant in the oil is common: test again after running warm.

step-terminals = Plug all back; check earth, bonding and terminals
    .why = A loose terminal burns; a loose earth kills, first of all in the wet.
    .how = Every plug back as in the photograph. Earth continuous from plate to supply, bonding of the pool connected, residual-current device by its button when power is back. Terminals at the maker's torque. A capacitor is discharged before it is measured.

step-flow-switch = Look at the flow switch
    .why = It stops the unit when the pump stops. Stuck, it lets the exchanger freeze or boil.
    .how = Paddle whole and free, arrow with the flow, no bridge in its wires, no green on its contacts.

step-first-extras = First service: bolts, mounts, seals, lagging
    .why = What settles in the first year shows now.
    .how = Feet and bolts, mounts, pipe lagging, cable entries sealed, terminals at full torque, papers complete. Note what the installer must put right.

## Reassemble

phase-reassemble = Close up
    .owner = We closed the machine and left it in the right state.
    .matters = Covers and guards keep children, water and animals out.

step-guard-salt = Protect bolts and seams against salt
    .why = Rust starts where paint is scratched and salt stays.
    .how = Dry first. Touch up paint, wax or grease on bolts and brackets. Nothing on the fins.

step-close-unit = Detector clear inside, then close guard and covers
    .why = A leak gathers low in the box; the fan must never be free.
    .how = Detector low inside. Turn the fan by hand: free, no tools inside. Guard on, covers on, all screws. Wipe the casing.

step-power-on = Take your lock off; pump first, then power
    .why = Now it may start by itself, and without water it trips.
    .how = Nobody at the unit. Bypass open, no leak. Pool pump first, then the unit; chlorinator and dosing stay locked. Listen and smell: anything odd, off again.

step-leave-off = Leave it off and locked
    .why = Dry, with the drain open, it must not start before spring.
    .how = Isolator off and the owner's lock on it, yours off. A sign: drained, do not switch on. A cover over it lets air through.

step-set-point-home = Put the pool set point back
    .why = The owner wants the pool as warm as it was.
    .how = Write down what the controller shows now.

## As left

phase-as-left = As left
    .owner = We measured again, in the same places, to see what the service changed.
    .matters = You see in numbers what you paid for.

step-run-left = Run it until it is steady
    .why = The readings can be compared only if the running is as settled as before.
    .how = A quarter of an hour, no defrost. Look for leaks. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-read-left = Take the same readings again
    .why = Before and after show what the work changed.
    .how = Same places, same instruments, all within a few minutes.

step-gauges-left = Gauges only where they may be opened: as left
    .why = The pressures tell whether the circuit changed.
    .how = Same gauges, same ports. Take them off quickly, caps on, then the detector at each port.

step-prove-flow-switch = Stop the pump: the unit must stop too
    .why = Only the trial shows that the switch works.
    .how = Pool pump off: the unit stops within seconds. Pump on again, wait until it restarts. Does not stop: unsafe finding, off and locked.

step-dosing-on = Pump running: chlorinator and dosing back on
    .why = Without chlorine the pool grows green; without flow the chlorinator makes gas.
    .how = Output and times as noted. See that they stop with the pump.

step-schedule-home = Put timer and mode back
    .why = A timer left on manual costs money and may leave the water cold.
    .how = Compare each page with the photograph as found. Check the clock too.

## Hand over

phase-hand-over = Hand over
    .owner = We told you what we found and what comes next.
    .matters = Right water keeps the exchanger alive longer than any cleaning.

step-tell-owner = Tell the owner and leave the place clean
    .why = The owner must know what was done, what was found and what comes next.
    .how = What was done, each finding, whom to call, next date. pH and chlorine as found, where they are dosed, and before frost: drain it. Take the waste with you.

step-tell-owner-winter = Tell the owner: drained, shut and off
    .why = Switched on dry it is ruined.
    .how = What was done, each finding, next date. In spring: drain shut, bypass open, pump first, then power, dosing last; better call. Take the waste with you.
