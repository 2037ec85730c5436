# The pack 'monobloc R290' in English. The keys are named in core/src/procedure/pack.rs.

pack = Monobloc for heating with R290
    .name = Yearly service of a small monobloc heat pump with R290 (propane)

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

condition-filling = What flows through the unit, with pressure on the gauge?
condition-filling-water = Heating water
condition-filling-glycol = A glycol mix

condition-drinking-water = Does the unit heat drinking water too?
condition-drinking-water-yes = Yes, a cylinder hangs at it
condition-drinking-water-no = No, heating only

condition-certificate = Do you hold the certificate for circuits with R290?
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
instrument-insulation-tester = Insulation tester
instrument-capacitance-meter = Capacitance meter
instrument-low-side-gauge = Gauge of the low side
instrument-high-side-gauge = Gauge of the high side
instrument-water-gauge = Pressure gauge for heating systems
instrument-refractometer = Refractometer

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
    .hint = Built-in or clamp-on meter. A bucket cannot measure a closed loop.
reading-glycol-in-found = Glycol mix into the unit, as found
    .hint = Clamp on bare pipe, lagging over it.
reading-glycol-out-found = Glycol mix out of the unit, as found
    .hint = Clamp on bare pipe, lagging over it.
reading-glycol-flow-found = Flow of the glycol mix, as found
    .hint = Built-in meter, or a clamp-on set to this glycol.
reading-power-found = Power taken, as found
    .hint = Compressor, fan and pump together, steady, no heating element on.
reading-system-pressure-found = Pressure of the heating system, as found
    .hint = At the gauge, pump running. 1 bar is 100 kPa.
reading-suction-line-found = Suction pipe, as found
    .hint = Clamp on bare pipe before the compressor, lagging over it.
reading-discharge-line-found = Discharge pipe, as found
    .hint = Clamp a hand's width after the compressor. Hot: do not touch the pipe.
reading-liquid-line-found = Liquid pipe, as found
    .hint = Clamp on bare pipe after the water heat exchanger, before the expansion.
reading-low-pressure-found = Pressure of the low side, as found
    .hint = Above the atmosphere. Only if you are certified and it has a port. Sealed: leave it empty.
reading-high-pressure-found = Pressure of the high side, as found
    .hint = Above the atmosphere. Only if you are certified and it has a port. Sealed: leave it empty.
reading-fitting-temperature = Temperature at the strainer
    .hint = On the bare body. Above 30 °C (86 °F): wait.
reading-vessel-precharge = Precharge of the expansion vessel
    .hint = At its air valve, water side shut off and let off. Water at the valve: the membrane is gone.
reading-heating-ph = pH of the heating water
    .hint = Mostly 8.2 to 10; with aluminium in the system at most 9.
reading-heating-conductivity = Conductivity of the heating water
    .hint = The maker's figure comes first. High: treated often, or salty filling water.
reading-heating-hardness = Hardness of the heating water
    .hint = As calcium carbonate, if you have the kit.
reading-frost-point = Frost protection down to
    .hint = Refractometer, the scale of this very glycol.
reading-glycol-share = Glycol in the mix
    .hint = Refractometer, if it has the scale. Below 25 %: it rusts and sludges.
reading-glycol-ph = pH of the glycol mix
    .hint = Below 7, brown or sour in smell: used up, a finding.
reading-glycol-percent = Glycol wanted in the mix, percent
    .hint = From the label, for the cold of this place.
reading-glycol-parts = Parts of water to 1 part of glycol
    .hint = Only if the label says it so.
reading-top-up-volume = Mix wanted in all
    .hint = For topping up: by the gauge, and a litre over.
reading-system-pressure-left = Pressure of the heating system, as left
    .hint = Cold, pump standing: the precharge and 30 kPa (0.3 bar) at least.
reading-cleaner-parts = Parts of water to 1 part of cleaner
    .hint = From the label of the cleaner in your hand.
reading-cleaner-percent = Cleaner in the ready mix, percent
    .hint = Only if the label says it so: the share of the whole.
reading-cleaner-dose = Cleaner to one litre of water
    .hint = Only if the label says it so: mL to 1 L, or fl oz to 1 US gal.
reading-cleaner-volume = Cleaner wanted in all
    .hint = Enough to wet every fin once.
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
reading-glycol-in-left = Glycol mix into the unit, as left
    .hint = Same clamp, same place.
reading-glycol-out-left = Glycol mix out of the unit, as left
    .hint = Same clamp, same place.
reading-glycol-flow-left = Flow of the glycol mix, as left
    .hint = Same meter, same place.
reading-power-left = Power taken, as left
    .hint = Steady, no heating element on.
reading-suction-line-left = Suction pipe, as left
    .hint = Same clamp, same place.
reading-discharge-line-left = Discharge pipe, as left
    .hint = Same clamp, same place. Hot: do not touch the pipe.
reading-liquid-line-left = Liquid pipe, as left
    .hint = Same clamp, same place.
reading-low-pressure-left = Pressure of the low side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-high-pressure-left = Pressure of the high side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-tap-hot = Hot water at the tap
    .hint = Nearest tap, after one minute. Hotter than people can bear: see the mixing valve.

## Photographs

shot-zone = The zone around the unit
    .show = Ground, walls and openings around the unit. Shows that nothing in it can light or collect gas.
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
shot-strainer = Strainer or magnetic filter
    .show = The screen or magnet as it came out, then clean. Shows how much sludge goes round.
shot-sample = Sample of the heating water
    .show = A clear glass against white, the values readable.
shot-filling-point = Filling point
    .show = Backflow preventer, hose off, cap on.
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
chemical-glycol = Glycol for heating systems, as on the unit's label
part-mount = Anti-vibration mount
part-cable-seal = Seal for a cable entry
part-strainer-seal = Seal for the strainer
part-vessel-seal = Seal for the expansion vessel
gear-detector = Refrigerant detector
gear-lock-and-tag = Lock and tag
gear-voltage-tester = Two-pole voltage tester
gear-goggles = Goggles
gear-chemical-gloves = Long chemical gloves
gear-apron = Chemical apron
gear-spray-covers = Bags and tape for the electrics
gear-brush = Soft brush
gear-sprayer = Low-pressure sprayer
gear-bucket = Two buckets
gear-pipe-clamps = Pipe clamp thermometers
gear-gauges = Gauges for this refrigerant
gear-refractometer = Refractometer
gear-filling-pump = Filling pump and canister
gear-backflow-preventer = Backflow preventer with hose

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
mix-glycol = Glycol mix for topping up
    .concentrate = Glycol with inhibitor
    .water = Demineralised or clean soft water
    .order-1 = Water into the canister.
    .order-2 = Then the glycol, the same kind as in the loop.
    .order-3 = Stir well, check it with the refractometer.
    .gear = Goggles and gloves. The label comes first. Never into a drain or the ground.

## Settings

excursion-schedule = Timer and mode
    .why = So that the unit runs when you measure, and a programme does not start it.
excursion-heating = Heating mode and flow temperature
    .why = Lowered so that the unit does not call for heat at once when power comes back.

## Arrive and make safe

phase-arrive = Arrive and make safe
    .owner = We looked at the place and made it safe to work.
    .matters = A safe start keeps people, the house and the machine from harm.

step-approach = Detector first: low down, before anything else
    .why = Propane burns, is heavier than air and flows into every hollow.
    .how = Switch the detector on away from the unit, come upwind, read it low down. Phone, torch, vacuum cleaner, cigarettes stay outside the zone: photograph from its edge. Alarm or smell: go back, no switch, people away, air the place, call the certified person and by local rules the fire service.

step-zone = Look over the zone around the unit
    .why = Leaked gas must find no way into a cellar and nothing that lights it.
    .how = By the maker's drawing; a metre all round at least. No drain, light well, cellar window, air inlet, socket, lamp or grill in it. Something new in it: unsafe finding, tell the owner, do not run it.

step-indoor-vents = Read the detector at the vents indoors
    .why = The plate exchanger can leak into the heating water. Then the gas comes out in the house.
    .how = At each vent, the air separator, the safety valve and the buffer, low down below them too. Alarm: windows open, nothing switched, out, call the certified person.

## Identify

phase-identify = Identify the unit
    .owner = We made sure that it was your machine, and wrote down its numbers.
    .matters = The right numbers keep your warranty and your history straight.

step-right-unit = Prove that it is the right unit
    .why = The record and the warranty hold for this serial number only.
    .how = Compare the serial number with the job. If it is another: stop and ask the office.

step-know-unit = Answer what kind of unit it is
    .why = The answers decide which steps come. Heating water brings sludge and no scale, so no acid has any business here.
    .how = Look at plate, manual and the label at the filling point: water or glycol, and which.

## As found

phase-as-found = As found
    .owner = We measured how the machine ran before we touched it.
    .matters = Only numbers from before and after show what the service did.

step-fit-to-run = See that it is fit to run
    .why = A damp, damaged or leaking unit must not run, not even to measure it.
    .how = Whole, dry, covers and fan guard on. Valves of the loop open, pressure on the gauge. Damp, damaged, leaking or dead: leave this step out and say why.

step-settings-found = Note the settings, then set the timer to manual
    .why = Timers and modes must go back exactly as the owner had them.
    .how = Photograph every page first. Write down the value you find and the one you set.

step-run-found = Run it until it is steady
    .why = Readings mean something only when the running is settled.
    .how = Let it heat for a quarter of an hour, taps and radiators open. No defrost, no heating element. Listen for fan, pump and compressor. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-water-found = Read the heating water as found
    .why = With flow and temperatures the heat can be worked out.
    .how = All of them within a few minutes. Mark where the clamps sit.

step-glycol-found = Read the glycol mix as found
    .why = The same readings are taken again at the end. Heat is not worked out: glycol carries less than water.
    .how = All of them within a few minutes. Mark where the clamps sit.

step-read-found = Take the readings as found
    .why = The same readings are taken again at the end.
    .how = All of them within a few minutes. Mark where the clamps sit: they come back to the same place.

step-gauges-found = Gauges only where they may be opened: as found
    .why = Clamps tell most of it. Each opening lets propane out beside you.
    .how = Only with ports, with gauges for R290, and if the clamps leave a question. Detector on at your feet, short hoses, goggles, gloves, no switch in the zone. Sealed: leave this step out.

## Isolate and strip

phase-isolate = Isolate and open
    .owner = We switched the power off, locked it and tested that it was off.
    .matters = Nobody can be hurt by a machine that cannot start.

step-lower-set-point = Lower the heating and stop the unit
    .why = When power comes back it must not start heating before you are ready.
    .how = Write down the values first. Let pump and fan run down.

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

step-covers-off = Detector low down, then covers and guard off
    .why = A small leak gathers in the box and waits for a spark.
    .how = Detector at the foot of the casing while you open. Photograph the wiring from the edge of the zone first. No power tools. Keep the screws apart. Mind sharp edges and hot pipes. Do not loosen any refrigerant fitting.

## Air coil

phase-air-coil = Clean the air coil
    .owner = We cleaned the fins that take warmth out of the air.
    .matters = Clean fins take in more warmth, so the machine uses less power.

step-cover-electrics = Cover the electrics against spray
    .why = Water in terminals and boards causes faults and shocks, even days later.
    .how = Bag the board, the terminals, the motor and the plugs. Tape the bags open side down.

step-brush-coil = Gear on, feel the coil cold, brush it dry
    .why = Wet dirt turns to mud between the fins; spray on a hot part splashes and warps it.
    .how = Goggles, gloves, long sleeves, mask. Coil and compressor must be hand-cold. Soft brush along the fins, never across. No vacuum cleaner here: it makes sparks.

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

## Heating water

phase-hydronics = Look after the heating water
    .owner = We cleaned the filter of your heating water and tested the water, its pressure and its vessel.
    .matters = Sludge blocks the machine, and lost pressure lets air in.

step-shut-valves = Shut the valves at the strainer; see that it is cold
    .why = Hot water under pressure scalds, and a whole house runs out through an open strainer.
    .how = Both sides of the strainer and the vessel's cap valve. Heating stays locked out. Measure at the strainer.

step-relieve = Let the pressure out between the valves
    .why = A cap under pressure flies, and the water behind it may still be warm.
    .how = Hose on the drain cock, into a bucket. It must run out without force and stop. Does not stop: a valve passes, leave it shut and note it as a finding.

step-strainer = Clean the strainer or magnetic filter
    .why = Black sludge blocks the plate exchanger. It is washed out: no acid, there is no scale.
    .how = Loosen slowly, face away; hissing or dripping: wait. Photograph screen and magnet, wash them, look for holes. Much sludge: a finding, flush the system on another visit. New seal. Sludge goes into a tub, not into a drain.

step-vessel = Measure the expansion vessel's precharge
    .why = Without its cushion the pressure rises and falls with the heat, until the safety valve drips and air comes in.
    .how = Cap valve shut, its drain open, no water comes: then the gauge at the air valve. Top up with nitrogen or dry air to the height of the system and 30 kPa (0.3 bar). Water at the air valve: a new vessel, a finding.

step-sample-water = Test the heating water
    .why = pH and salts tell whether it eats metal and makes sludge.
    .how = From the drain, after a litre has run. Clear or black, smell: note it. Out of bounds: a finding; treat it only with what the maker allows.

step-sample-glycol = Test the glycol mix
    .why = Too thin freezes and bursts the exchanger; used up it turns sour and eats metal.
    .how = A drop on the refractometer, scale of this glycol, cold. Then the pH. Frost protection above the coldest day of this place: a finding, put it right before frost.

step-guard-mains = Filling with backflow protection
    .why = When the mains drop, heating water is sucked into the drinking water.
    .how = Treated heating water: a preventer with reduced-pressure zone (type BA, EN 1717 category 4); local codes come first. Hose on only while you fill, and you stay beside it.

step-mix-glycol = Mix glycol for topping up
    .why = Plain water thins the mix; a hose from the mains brings glycol into the drinking water.
    .how = Canister and pump, never the mains. The same glycol as in the loop: kinds that do not go together curdle.

step-top-up = Open the valves, bring the pressure up
    .why = Too low lets air in, too high opens the safety valve.
    .how = Vessel's cap valve and both valves open, slowly. Fill to the precharge and 30 kPa (0.3 bar) at least. Look at strainer and vessel: dry. Hose off, cap on.

step-bleed = Detector to the vents, then let the air out
    .why = What hisses out of a vent may be propane.
    .how = Detector at the vent first. Open a little, cloth over it, until water comes without bubbles. Alarm: shut it, windows open, nothing switched, out, call the certified person. Gas that comes again and again is a finding.

step-safety-valve = Lift the safety valve
    .why = A stuck one lets the system burst.
    .how = Hands and face away from the outlet. Lift once, let it snap shut, see that it stops; bring the pressure up again. Stuck or dripping: unsafe finding.

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

step-insulation-test = Detector clear, then test the insulation
    .why = A weak winding or cable is found before it fails or shocks. The test makes sparks.
    .how = Detector low in the box: clear. The maker's voltage, all live poles together to earth, never with the compressor under vacuum. Discharge after the test. A low value with refrigerant in the oil is common: test again after running warm.

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

step-guard-salt = Protect bolts and seams against salt
    .why = Rust starts where paint is scratched and salt stays.
    .how = Dry first. Touch up paint, wax or grease on bolts and brackets. Nothing on the fins.

step-close-unit = Detector clear inside, then close guard and covers
    .why = A leak gathers low in the box; the fan must never be free.
    .how = Detector low inside. Turn the fan by hand: free, no tools inside. Guard on, covers on, all screws. Wipe the casing.

step-power-on = Detector clear, lock off, power on
    .why = Now it may start by itself, and a switch makes a spark.
    .how = Nobody in the zone. Loop full, valves open, no leak. Unit first, then the further supplies. Listen and smell: anything odd, off again from outside of the zone.

step-set-point-home = Put the heating back
    .why = The owner wants the house as warm as it was.
    .how = Write down what the controller shows now.

## As left

phase-as-left = As left
    .owner = We measured again, in the same places, to see what the service changed.
    .matters = You see in numbers what you paid for.

step-run-left = Run it until it is steady
    .why = The readings can be compared only if the running is as settled as before.
    .how = A quarter of an hour, no defrost, no heating element. Look for leaks. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-water-left = Read the heating water as left
    .why = Before and after show what the work changed.
    .how = Same places, same instruments, all within a few minutes.

step-glycol-left = Read the glycol mix as left
    .why = Before and after show what the work changed.
    .how = Same places, same instruments, all within a few minutes.

step-read-left = Take the same readings again
    .why = Before and after show what the work changed.
    .how = Same places, same instruments, all within a few minutes.

step-gauges-left = Gauges only where they may be opened: as left
    .why = The pressures tell whether the circuit changed.
    .how = Same gauges, same ports, detector on. Take them off quickly, caps on, then the detector at each port.

step-indoor-again = Detector at the vents indoors once more
    .why = With the pump running and the pressure up a small leak shows.
    .how = Same places as on arrival. Alarm: windows open, nothing switched, out, call the certified person; the unit stays off.

step-schedule-home = Put timer and mode back
    .why = A timer left on manual costs money and may leave the water cold.
    .how = Compare each page with the photograph as found. Check the clock too.

## Hand over

phase-hand-over = Hand over
    .owner = We told you what we found and what comes next.
    .matters = You know whom to call, and what must stay out of the zone around the machine.

step-check-hot-water = Check the tap for scalding and the reheating
    .why = Too hot scalds in seconds; too cool for long breeds legionella.
    .how = Measure at the nearest tap. Too hot: mixing valve, tell the owner, do not leave it. Read the cylinder: disinfecting temperature reached, or tell the owner when it will be. Guide values: 60 °C (140 °F) stored, mixed down near the tap (WHO 2007, from memory). Local codes come first.

step-tell-owner = Tell the owner and leave the place clean
    .why = The owner must know what was done, what was found and what comes next.
    .how = What was done, each finding, whom to call, next date. What must never stand in the zone, and what to do at a smell of gas. Take the waste with you.
