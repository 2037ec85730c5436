# The pack 'split R744 water heater' in English. The keys are named in core/src/procedure/pack.rs.

pack = Split water heater with R744
    .name = Yearly service of a split water heater with R744 (carbon dioxide)

## Questions

condition-first-service = Is this the first service of this unit?
condition-first-service-yes = Yes, the first
condition-first-service-no = No

condition-coil = How are the fins of the air coil?
condition-coil-plain = Plain metal
condition-coil-coated = Coated (coloured, or the maker says so)

condition-sea = Is the sea near?
condition-sea-near = Near: salt reaches the unit
condition-sea-far = Far

condition-frost = Can it freeze where the unit stands?
condition-frost-yes = Yes
condition-frost-no = No

condition-exchanger = Descaling the gas cooler: what is its water side made of?
condition-exchanger-stainless = Stainless steel, and the maker allows acid
condition-exchanger-copper = Copper, and the maker allows acid
condition-exchanger-no-acid = Not known, double wall, or acid is forbidden: flush only
condition-exchanger-not-due = Descaling is not due: flush only

condition-descaler = Which acid is in the descaler?
condition-descaler-citric = Citric
condition-descaler-phosphoric = Phosphoric
condition-descaler-sulfamic = Sulfamic
condition-descaler-hydrochloric = Hydrochloric

condition-certificate = Do you hold the certificate for circuits with R744?
condition-certificate-yes = Yes, and it is valid
condition-certificate-no = No: the circuit stays shut

condition-reheat = Is the cylinder back at its disinfecting temperature?
condition-reheat-reached = Yes, reached and read off
condition-reheat-pending = Not yet; the owner knows that it is still to come

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
instrument-low-side-gauge = Gauge of the low side, for R744
instrument-high-side-gauge = Gauge of the high side, for R744

## Readings

reading-serial = Serial number of the unit
    .hint = Copy it from the nameplate, letter by letter.
reading-controller-serial = Serial number of the controller
    .hint = On the controller's back or in its info menu.
reading-hours = Running hours of the compressor
    .hint = From the controller, if it counts them.
reading-air-on-found = Air on to the coil, as found
    .hint = In the shade, a hand's width before the fins.
reading-air-off-found = Air off the fan, as found
    .hint = In the middle of the air stream, outside of the guard.
reading-water-in-found = Water into the unit, as found
    .hint = Clamp on bare pipe, lagging over it.
reading-water-out-found = Water out of the unit, as found
    .hint = Clamp on bare pipe, lagging over it.
reading-flow-found = Water flow, as found
    .hint = It is small: from the controller, or a meter for small flows.
reading-power-found = Power taken, as found
    .hint = Compressor, fan and pump together, steady, no heating element on.
reading-tank-found = Cylinder temperature, as found
    .hint = From the controller or the cylinder's own thermometer.
reading-suction-line-found = Suction pipe, as found
    .hint = Clamp on bare pipe before the compressor, lagging over it.
reading-discharge-line-found = Discharge pipe, as found
    .hint = Clamp a hand's width after the compressor. Above 100 °C: do not touch the pipe.
reading-cooler-outlet-found = Gas cooler's outlet, as found
    .hint = Clamp on bare pipe after the gas cooler, before the expansion.
reading-low-pressure-found = Pressure of the low side, as found
    .hint = Above the atmosphere, in kPa: 1 bar is 100 kPa. Sealed: leave it empty.
reading-high-pressure-found = Pressure in the gas cooler, as found
    .hint = Above the atmosphere, up to 16 000 kPa. Sealed: leave it empty.
reading-loop-temperature = Loop temperature before opening
    .hint = The hotter of the two pipes. Warm above 30 °C (86 °F): wait.
reading-fitting-temperature = Temperature at the strainer
    .hint = On the bare body. Above 30 °C (86 °F): wait.
reading-supply-ph = pH of the supply water
    .hint = The water that you fill with. The rinse is judged by it.
reading-supply-conductivity = Conductivity of the supply water
    .hint = If you have the meter. The rinse is judged by it.
reading-supply-hardness = Hardness of the supply water
    .hint = As calcium carbonate. Tells when descaling is next due.
reading-supply-alkalinity = Alkalinity of the supply water
    .hint = As calcium carbonate, if you have the kit. With it the scaling index can be told.
reading-water-use = Hot water used in a day
    .hint = Ask the owner: about 50 L (13 gal) a person. It tells when to descale next.
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
    .hint = As it leaves the loop. It must equal the supply's.
reading-rinse-conductivity = Conductivity of the rinse water
    .hint = As it leaves the loop. It must equal the supply's.
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
    .hint = Steady, no heating element on.
reading-tank-left = Cylinder temperature, as left
    .hint = Same thermometer as before.
reading-suction-line-left = Suction pipe, as left
    .hint = Same clamp, same place.
reading-discharge-line-left = Discharge pipe, as left
    .hint = Same clamp, same place. Hot: do not touch the pipe.
reading-cooler-outlet-left = Gas cooler's outlet, as left
    .hint = Same clamp, same place.
reading-low-pressure-left = Pressure of the low side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-high-pressure-left = Pressure in the gas cooler, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-tap-hot = Hot water at the tap
    .hint = Nearest tap, after one minute. Hotter than people can bear: see the mixing valve.

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
shot-strainer = Strainer
    .show = The screen as it came out, then clean. Shows what goes round in the water.
shot-loop-connected = Service pump connected
    .show = Both shut valves, both hoses, pump and bucket in one picture.
shot-rinse-proof = Proof of the rinse
    .show = The meters in the rinse water, values readable.
shot-wiring-after = Wiring after the work
    .show = The same view as before: dry, every plug in, every wire back.
shot-mounting = Feet, bolts and pipes
    .show = Feet, bolts, anti-vibration mounts and where pipes and cables enter.
shot-salt = Fastenings after salt care
    .show = Bolts, brackets and seams: the rust found, and the protection on it.
shot-frost-guard = Frost protection
    .show = Drain cocks or frost valves, lagging and heating cable.
shot-casing-after = The unit after the work
    .show = The same view as before: closed, clean, nothing left behind.
shot-display-left = Display while running
    .show = The unit running, with no fault shown.
shot-settings-after = Settings as left
    .show = The same display as before. Each value as found.

## What comes along

chemical-degreaser = Degreaser for plain coils
chemical-neutral-cleaner = pH-neutral coil cleaner
chemical-descaler = Descaler for drinking-water systems
chemical-neutraliser = Sodium bicarbonate
part-mount = Anti-vibration mount
part-cable-seal = Seal for a cable entry
part-port-seal = Seal for a service port
part-strainer-seal = Seal for the strainer
part-air-vent = Air vent
gear-carbon-dioxide-meter = Carbon dioxide meter
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
gear-r744-gauges = Gauges and hoses rated for R744

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
    .concentrate = Descaler for drinking-water systems
    .water = Clean water, already in bucket and loop
    .order-1 = Water first: measure what is in bucket and loop.
    .order-2 = Then the acid, slowly, into the water. Never water into acid.
    .order-3 = Stir gently, face away, and wait until the fizz settles.
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
    .why = So that the unit runs when you measure, and a programme does not start it.
excursion-set-point = Hot-water set point
    .why = Lowered so that the unit does not call for heat at once when power comes back.

## Arrive and make safe

phase-arrive = Arrive and make safe
    .owner = We looked at the place and made it safe to work.
    .matters = A safe start keeps people, the house and the machine from harm.

step-approach = Air the place; read the carbon dioxide meter
    .why = Escaped carbon dioxide is heavier than air, does not smell, and takes your breath in pits, cellars and small rooms.
    .how = Open door and window before you stay. Meter low down, below 5000 ppm. Hissing, frost on a pipe, headache or short breath: out at once, air the place, call the certified person. The circuit stands above 100 bar: nothing is knocked or bent. Stand safely; no work on a ladder alone.

step-fit-to-run = See that it is fit to run
    .why = A damp, damaged or leaking unit must not run, not even to measure it.
    .how = Whole, dry, covers and fan guard on. Both valves to the cylinder open, cylinder full. Damp, damaged, leaking or dead: leave this step out and say why.

## Identify

phase-identify = Identify the unit
    .owner = We made sure that it was your machine, and wrote down its numbers.
    .matters = The right numbers keep your warranty and your history straight.

step-right-unit = Prove that it is the right unit
    .why = The record and the warranty hold for this serial number only.
    .how = Compare the serial number with the job. If it is another: stop and ask the office.

step-know-unit = Answer what kind of unit it is
    .why = The answers decide which steps come. A wrong cleaner or acid can ruin the unit.
    .how = Look at plate and manual. Many makers of gas coolers forbid acid: without their yes in writing the answer is 'flush only'.

## As found

phase-as-found = As found
    .owner = We measured how the machine ran before we touched it.
    .matters = Only numbers from before and after show what the service did.

step-settings-found = Note the settings, then set the timer to manual
    .why = Timers and modes must go back exactly as the owner had them.
    .how = Photograph every page first. Write down the value you find and the one you set.

step-run-found = Run it until it is steady
    .why = Readings mean something only when the running is settled.
    .how = Let it heat water for a quarter of an hour. No defrost, no heating element. Listen for the fan, the pump and the compressor. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-read-found = Take the readings as found
    .why = The same readings are taken again at the end.
    .how = All of them within a few minutes. Mark where the clamps sit: they come back to the same place.

step-gauges-found = R744 gauges only where they may be opened: as found
    .why = The charge is weighed to a few grams. Each opening loses some of it, and a hose above 100 bar kills when it lets go.
    .how = Only if the clamps leave a question and the maker has ports. Gauges, hoses and valves rated for R744, goggles, gloves. Never trap liquid between two shut valves. Place aired, meter on. Sealed: leave this step out.

## Isolate and strip

phase-isolate = Isolate and open
    .owner = We switched the power off, locked it and tested that it was off.
    .matters = Nobody can be hurt by a machine that cannot start.

step-lower-set-point = Lower the hot-water set point and stop the unit
    .why = When power comes back it must not start heating before you are ready.
    .how = Write down the value first. Let pump and fan run down.

step-lock-off = Switch every supply off, lock it, tag it
    .why = Off is not isolated. Only your own lock stops somebody from switching it on.
    .how = The unit, its heating element, an off-peak supply, a solar diverter: find them all. Your lock, your tag, your key in your pocket. The licensed person decides where local codes say so.

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
    .why = The coil and the gas cooler are looked after from inside as well.
    .how = Photograph the wiring first. Also at rest the pipes hold 50 bar and more, in the sun up to their safety valve: lean on none, loosen none, keep your face away from the safety valve's outlet. Mind sharp edges and hot pipes.

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

## Gas cooler

phase-exchanger = Clean the water side
    .owner = We cleaned the part that gives the warmth to your water, and rinsed it until the rinse matched the tap water.
    .matters = Scale costs power and shortens the life of the machine. The rinse keeps your drinking water clean.

step-gear-on = Gear on, eyewash in reach
    .why = Splashes come without warning, and the first seconds count.
    .how = Goggles and face shield, long chemical gloves, apron, closed shoes. Eyewash open in reach, not in the van. Fresh air through the place.

step-shut-valves = Shut both valves; see that the loop is cold
    .why = The cylinder's water must stay clean, and hot water under pressure scalds.
    .how = Both valves between unit and cylinder. Compressor and heating elements stay locked out. Measure both pipes. Above 30 °C (86 °F): wait.

step-leak-test = Open the ports, drain, see that no more comes
    .why = A valve that passes would let acid into the drinking water.
    .how = Hose on each service port, both into a bucket. Open slowly, face away. Let the loop run out. Then watch: the cylinder's pressure still stands at the valves.
    .then = No drop in two minutes: the valves hold. A drip: do not use acid; the valve is a finding.

step-strainer = Open the strainer and clean it
    .why = The flow is small: a little dirt is enough to stop it.
    .how = Loosen slowly, face away; hissing or dripping: wait. Photograph the screen, wash it, look for holes. New seal, close it hand-tight and a little.

step-pump = Look at the pump
    .why = A pump that leaks or sticks lets the gas cooler boil.
    .how = Dry below, no lime at the seal, plugs tight. Where the maker gives access: the shaft turns freely.

step-connect-loop = Connect the service pump
    .why = With the unit dead only your own pump can move the water.
    .how = Bucket, pump, lower port in, upper port back into the bucket, return open to the air. Pump on a residual-current device. Fill the bucket with an air gap or through backflow protection, never with a hose hanging in it.

step-water-first = Fill with water and run the pump
    .why = Leaks show with water, and acid must always come into water.
    .how = Measure the water that you pour in: it is part of the mix. Small exchanger: about 2 litres (half a US gallon). Run until no air comes, look at every joint, stop the pump. Test the supply water.

step-match-descaler = Match the descaler with the gas cooler
    .why = The wrong acid eats through to the refrigerant's side; acid with chlorine or alkali makes gas and heat.
    .how = The maker allows acid, this one, in writing; double wall: never. The label allows drinking-water systems and this metal. Say which acid it is. Never hydrochloric on stainless steel; solder, zinc and aluminium count too. All alkaline cleaner rinsed away, no chlorine near. In doubt: no acid, correct the answer and flush only.

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

step-rinse-loop = Rinse the loop with fresh water
    .why = Nothing of the work may stay in a drinking-water part.
    .how = Fresh water through, to the waste, three buckets at least, both ways. Air gap or backflow protection as before. Then stop the pump.

step-prove-rinse = Prove the rinse against the supply water
    .why = Eyes and nose cannot tell. Equal pH or conductivity can.
    .how = Measure at the end of the return hose. Equal to the supply within what your meter can tell? If not: rinse again and measure again.

step-flush-loop = Open the valves; flush the loop to the drain
    .why = The first drinking water through takes the last of the rinse with it.
    .how = Service ports still open to the drain. Open the valves one after the other, slowly: it may be hot. Twice the loop's content to the drain. See that the cylinder is full.

step-close-ports = Close and cap the ports, pack the chemicals
    .why = A weeping port wets the electrics; loose acid hurts somebody.
    .how = Ports shut, hoses off, caps on, air out, joints dry. Acid, alkali and chlorine apart in the van, lids shut. Wash the gloves, then take the gear off.

step-vent-air = Let the air out at the vents
    .why = Air stops the small flow, and the water boils in the gas cooler.
    .how = Each vent, the highest last, until water comes without bubbles. Cloth over it: it may be hot. A vent that weeps is renewed.

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

step-terminals = Plug all back; check earth and terminals
    .why = A loose terminal burns; a loose earth kills.
    .how = Every plug back as in the photograph. Earth continuous from plate to supply. Terminals at the maker's torque. A capacitor is discharged before it is measured.

step-first-extras = First service: bolts, mounts, seals, lagging
    .why = What settles in the first year shows now.
    .how = Feet and bolts, mounts, pipe lagging, cable entries sealed, terminals at full torque, papers complete. Note what the installer must put right.

## Reassemble

phase-reassemble = Close up and switch on
    .owner = We closed the machine and put the power back in the right order.
    .matters = Covers and guards keep children, water and animals out.

step-look-circuit = Look along the refrigerant pipes
    .why = A pipe that rubs bursts above 100 bar.
    .how = Look, do not pull: rub marks, oil, frost, clips gone, the safety valve's outlet free. Anything found: unsafe finding, the certified person before power.

step-frost-drain = Check the frost protection and its drain
    .why = In a power cut the standing water freezes and bursts the gas cooler.
    .how = Drain cocks turn and reach the lowest point, or frost valves are free and tight; lagging whole, heating cable with its own supply noted. Show the owner how to drain it.

step-guard-salt = Protect bolts and seams against salt
    .why = Rust starts where paint is scratched and salt stays.
    .how = Dry first. Touch up paint, wax or grease on bolts and brackets. Nothing on the fins.

step-close-unit = Meter clear inside, then close guard and covers
    .why = A leak shows as carbon dioxide low in the box; the fan must never be free.
    .how = Meter low inside. Turn the fan by hand: free, no tools inside. Guard on, covers on, all screws. Wipe the casing.

step-power-on = Take your lock off and put the power on
    .why = Now it may start by itself.
    .how = Nobody at the unit. Cylinder full, valves open, no leak. Unit first, then the further supplies. Listen and smell: anything odd, off again.

step-set-point-home = Put the set point back
    .why = The owner wants the water as it was, and the legionella heating needs it.
    .how = Write down what the controller shows now.

## As left

phase-as-left = As left
    .owner = We measured again, in the same places, to see what the service changed.
    .matters = You see in numbers what you paid for.

step-run-left = Run it until it is steady
    .why = The readings can be compared only if the running is as settled as before.
    .how = A quarter of an hour, no defrost, no heating element. Look for leaks. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-read-left = Take the same readings again
    .why = Before and after show what the work changed.
    .how = Same places, same instruments, all within a few minutes.

step-gauges-left = R744 gauges only where they may be opened: as left
    .why = The pressures tell whether the gas cooler changed.
    .how = Same gauges, same ports. Let the hoses off slowly, outside, caps on, then look for leaks at each port.

step-schedule-home = Put timer and mode back
    .why = A timer left on manual costs money and may leave the water cold.
    .how = Compare each page with the photograph as found. Check the clock too.

## Hand over

phase-hand-over = Hand over
    .owner = We checked the hot water at the tap and told you what comes next.
    .matters = Water that is too hot burns; water that is too cool can carry germs.

step-check-hot-water = Check the tap for scalding and the reheating
    .why = Too hot scalds in seconds; too cool for long breeds legionella.
    .how = Measure at the nearest tap. Too hot: mixing valve, tell the owner, do not leave it. Read the cylinder: disinfecting temperature reached, or tell the owner when it will be. Guide values: 60 °C (140 °F) stored, mixed down near the tap (WHO 2007, from memory). Local codes come first.

step-tell-owner = Tell the owner and leave the place clean
    .why = The owner must know what was done, what was found and what comes next.
    .how = What was done, each finding, whom to call, next date. If reheating is still to come: until when to be careful with the water. Take the waste with you.
