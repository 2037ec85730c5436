# The words of the canon: facts, what to do for them, dangers, hazards, acts. The Rust names of the keys are in
# core/src/visit/fact.rs, core/src/procedure/danger.rs and core/src/procedure/pack.rs.

## Facts

fact-supply = Power to the unit
fact-supply-on = on
fact-supply-off = off, not proved
fact-supply-proved-dead = proved dead
need-supply-on = Switch the power on, once everything is closed and dry.
need-supply-off = Switch the power off at the isolator and lock it.
need-supply-proved-dead = Prove the tester, test that the unit is dead, prove the tester again.

fact-further-supplies = Further supplies
fact-further-supplies-none = none
fact-further-supplies-on = on
fact-further-supplies-off = off, not proved
fact-further-supplies-proved-dead = proved dead
need-further-supplies-none = Look for a heating element, an off-peak supply and a solar diverter, and find none.
need-further-supplies-on = Switch the further supplies on, once the cylinder is full.
need-further-supplies-off = Switch every further supply off and lock it: element, off-peak, solar diverter.
need-further-supplies-proved-dead = Test every further supply dead: element, off-peak, solar diverter.

fact-stored-charge = Charge in capacitors
fact-stored-charge-present = may be there
fact-stored-charge-waited-out = waited out
need-stored-charge-present = The unit was under power.
need-stored-charge-waited-out = Wait out the time on the maker's label after switching off.

fact-unit-pump = Pump of the unit
fact-unit-pump-stopped = stopped
fact-unit-pump-running = running
need-unit-pump-stopped = Stop the unit and let its pump run down.
need-unit-pump-running = Start the unit and see that its pump runs.

fact-service-pump = Service pump
fact-service-pump-stopped = stopped
fact-service-pump-running = running
need-service-pump-stopped = Stop the service pump.
need-service-pump-running = Fill the loop, then start the service pump.

fact-service-supply = Supply of the service pump
fact-service-supply-protected = residual-current device
fact-service-supply-bare = not protected
need-service-supply-protected = Plug the service pump into a residual-current device and press its test button.
need-service-supply-bare = The service pump has no residual-current device.

fact-heat-sources = Compressor and heaters
fact-heat-sources-enabled = may start
fact-heat-sources-locked-out = locked out
need-heat-sources-enabled = Let compressor and heaters start again.
need-heat-sources-locked-out = Lock compressor and heaters out so that they cannot start by themselves.

fact-valves = Valves to the cylinder
fact-valves-open = open
fact-valves-shut = shut, not proved
fact-valves-proved-shut = proved shut
need-valves-open = Open the valves to the cylinder.
need-valves-shut = Shut both valves to the cylinder.
need-valves-proved-shut = Prove the valves shut with a leak test.

fact-loop = Water loop
fact-loop-empty = empty
fact-loop-water = water
fact-loop-acid = acid
fact-loop-spent = spent acid
fact-loop-neutraliser = neutraliser
fact-loop-rinse = rinse water
fact-loop-glycol = glycol mix
need-loop-empty = Drain the loop.
need-loop-water = Fill the loop with water.
need-loop-acid = Circulate the acid mix.
need-loop-spent = Circulate the acid until the fizz stops.
need-loop-neutraliser = Circulate the neutraliser.
need-loop-rinse = Rinse the loop with fresh water.
need-loop-glycol = Fill the loop with the glycol mix.

fact-loop-vent = Vent of the loop
fact-loop-vent-closed = closed
fact-loop-vent-vented = open to the air
need-loop-vent-closed = Close and cap the service ports.
need-loop-vent-vented = Open a service port to the air so that gas and pressure get out.

fact-loop-heat = Temperature of the loop
fact-loop-heat-hot = hot
fact-loop-heat-cold = cold
need-loop-heat-hot = The loop was measured hot.
need-loop-heat-cold = Let the loop cool and measure it.

fact-rinse-check = Proof of the rinse
fact-rinse-check-unproved = not yet proved
fact-rinse-check-proved = equals the supply
need-rinse-check-unproved = The loop is not rinsed and measured yet.
need-rinse-check-proved = Rinse until pH or conductivity equals the supply water's.

fact-coil = Air coil
fact-coil-hot = hot
fact-coil-cold = cold
need-coil-hot = The coil was felt hot.
need-coil-cold = Let the coil cool until it is hand-cold.

fact-covers = Covers
fact-covers-on = on
fact-covers-off = off
need-covers-on = Put all covers on.
need-covers-off = Take the covers off, once the unit is proved dead.

fact-electrics = Electrics against spray
fact-electrics-covered = covered
fact-electrics-bare = not covered
need-electrics-covered = Cover the electrics against spray.
need-electrics-bare = Take the spray cover off the electrics.

fact-dampness = Damp in the electrics
fact-dampness-damp = damp
fact-dampness-dry = dry
need-dampness-damp = The electrics were found damp.
need-dampness-dry = Uncover the electrics, look for damp, dry what is damp.

fact-fan-guard = Fan guard
fact-fan-guard-on = on
fact-fan-guard-off = off
need-fan-guard-on = Put the fan guard on.
need-fan-guard-off = Take the fan guard off, once the unit is proved dead.

fact-earth = Protective earth
fact-earth-on = connected
fact-earth-off = not connected
need-earth-on = Connect the protective earth and check it.
need-earth-off = The protective earth was found open.

fact-eyes = Eyes
fact-eyes-protected = protected
fact-eyes-bare = not protected
need-eyes-protected = Put goggles or a face shield on.
need-eyes-bare = The eye protection is off.

fact-hands = Hands
fact-hands-protected = protected
fact-hands-bare = not protected
need-hands-protected = Put gloves on that suit the chemical.
need-hands-bare = The gloves are off.

fact-body = Body
fact-body-protected = protected
fact-body-bare = not protected
need-body-protected = Put apron or suit and closed shoes on.
need-body-bare = The apron or suit is off.

fact-eyewash = Eyewash
fact-eyewash-at-hand = in reach
fact-eyewash-absent = not in reach
need-eyewash-at-hand = Place the eyewash open and in reach.
need-eyewash-absent = There is no eyewash in reach.

fact-room = Air of the place
fact-room-ventilated = ventilated
fact-room-closed = closed in
need-room-ventilated = Open the place so that fresh air goes through.
need-room-closed = The place has no fresh air.

fact-gas = Refrigerant detector
fact-gas-clear = clear
fact-gas-alarm = alarm
need-gas-clear = Read the detector low at the unit; it must be clear.
need-gas-alarm = The detector gave an alarm.

fact-vessel = Bucket
fact-vessel-empty = empty
fact-vessel-water = water
fact-vessel-acid-mix = acid mix
fact-vessel-alkali-mix = neutraliser mix
fact-vessel-cleaner = coil cleaner
need-vessel-empty = Empty the bucket by local rules and rinse it.
need-vessel-water = Put the water into the bucket first.
need-vessel-acid-mix = Pour the acid into the water in the bucket.
need-vessel-alkali-mix = Mix the neutraliser.
need-vessel-cleaner = Mix the coil cleaner.

fact-exchanger-acid = Acid on this exchanger
fact-exchanger-acid-allowed = allowed
fact-exchanger-acid-forbidden = forbidden
need-exchanger-acid-allowed = Check on the label and with the maker that this acid suits the exchanger's metal.
need-exchanger-acid-forbidden = The exchanger must not meet acid.

fact-alkali-residue = Alkali or chlorine near
fact-alkali-residue-none = none
fact-alkali-residue-present = present
need-alkali-residue-none = Rinse all alkaline cleaner away and take chlorine and pool chemicals out of the place.
need-alkali-residue-present = Alkali or chlorine is near.

fact-backflow = Drinking-water protection
fact-backflow-protected = protected
fact-backflow-open = not protected
need-backflow-protected = Fill through an air gap or backflow protection.
need-backflow-open = Filling is not protected against backflow.

fact-tank = Cylinder
fact-tank-full = full
fact-tank-not-full = not full
need-tank-full = Fill the cylinder and let the air out.
need-tank-not-full = The cylinder was found not full.

fact-reheat = Disinfecting temperature
fact-reheat-reached = reached
fact-reheat-handed-over = still to come, owner told
fact-reheat-not-needed = no drinking water at this unit
need-reheat-reached = Heat the cylinder up to its disinfecting temperature.
need-reheat-handed-over = Tell the owner that the disinfecting reheat is still to come, and when.
need-reheat-not-needed = See whether drinking water hangs at this unit.

fact-scald-check = Scald check at the tap
fact-scald-check-done = done
fact-scald-check-open = still to do
fact-scald-check-not-needed = no hot water at taps from this unit
need-scald-check-done = Measure the hot water at the tap.
need-scald-check-open = The hot water at the tap was not measured.
need-scald-check-not-needed = See whether taps get hot water from this unit.

fact-tag = Lock and tag
fact-tag-tagged = on the isolator
fact-tag-untagged = taken off
need-tag-tagged = Hang your lock and tag on the isolator.
need-tag-untagged = Take your lock and tag off.

fact-electronics = Plugs of the electronics
fact-electronics-connected = plugged in
fact-electronics-disconnected = unplugged
need-electronics-connected = Plug the electronics back in.
need-electronics-disconnected = Unplug boards, drives and sensors.

fact-fitting-pressure = Pressure behind the fitting
fact-fitting-pressure-present = under pressure
fact-fitting-pressure-relieved = relieved
need-fitting-pressure-present = The fitting stands under pressure.
need-fitting-pressure-relieved = Shut the feed and let the pressure out; see it run dry at an open outlet.

fact-fitting-heat = Water behind the fitting
fact-fitting-heat-hot = hot
fact-fitting-heat-cold = cold
need-fitting-heat-hot = The water behind the fitting was measured hot.
need-fitting-heat-cold = Let the water behind the fitting cool and measure it.

fact-air-path = Way of the air
fact-air-path-clear = clear
fact-air-path-blocked = blocked
need-air-path-clear = Take sheets and plugs away; put filter and ducts back.
need-air-path-blocked = The way of the air is shut for the work.

fact-ignition-sources = Sources of ignition
fact-ignition-sources-kept-away = kept away
fact-ignition-sources-present = in the zone
need-ignition-sources-kept-away = Leave phone, torch and vacuum cleaner outside the zone.
need-ignition-sources-present = Something in the zone can make a spark.

fact-certificate = Certificate for refrigerant circuits
fact-certificate-held = held
fact-certificate-none = not held
need-certificate-held = Call the certified person: only they open the circuit.
need-certificate-none = The circuit stays shut.

## Acts

act-spray = Spray at the unit
act-energise = Put the power on
act-insulation-test = Test the insulation with high voltage
act-hand-over = Hand the unit over running
act-open-water = Open the water circuit
act-open-fitting = Open a fitting with water behind it
act-open-circuit = Open the refrigerant circuit

## Dangers

danger-acid-past-valves = The valves are not proved shut: acid could get into the drinking water.
    .do = Keep the acid out. Shut both valves and prove them with a leak test. If acid is in: stop the pump, drain it into the bucket, and tell people not to use the water.
danger-acid-before-water = Acid would go in before water: it boils up and spits.
    .do = Put the water in first, then pour the acid slowly into the water.
danger-acid-unvented = The loop cannot vent: acid or neutraliser makes gas, and the pressure bursts a hose.
    .do = Stop the pump. Open the return to the air, face away, then go on.
danger-acid-unprotected = Eyes, hands or body are not protected, or there is no eyewash in reach: acid blinds and burns.
    .do = Step back. Put goggles, gloves and apron on and the eyewash in reach. After a splash: rinse with water for 15 minutes and more, and call for help.
danger-acid-hot = The loop is not cold, or something may still heat it: hot acid attacks fast, gasses and spits.
    .do = Lock compressor and heaters out and let the loop cool. Measure it before acid comes near.
danger-acid-material = It is not sure that this acid suits the metal of the exchanger: it could eat through into the drinking water.
    .do = Check label and maker. In doubt, flush with water only. If acid is in: drain it, rinse it out, and note it as a finding.
danger-acid-beside-alkali = Alkali or chlorine is near, or may be: with acid it makes poisonous gas and heat.
    .do = Keep the acid shut. Rinse all cleaner away and take chlorine and pool chemicals out of the place. If you smell chlorine: leave, fresh air, call for help.
danger-drinking-water-unproved = The rinse is not proved: what is in the loop would get into the drinking water.
    .do = Keep the valves to the cylinder shut. Rinse until pH or conductivity equals the supply water's. If they were open: shut them and tell people not to use the water.
danger-backflow-unprotected = Filling is not protected against backflow: water from the loop could be sucked into the mains.
    .do = Take the hose out of the bucket. Fill with an air gap or through backflow protection.
danger-pump-dry = The pump would run with the loop empty, or nobody knows what is in it: a dry pump is soon ruined and its seal leaks.
    .do = Stop the pump. Fill the loop and let the air out, then start it.
danger-loop-shut-with-heat = The loop is shut in and something may heat it: pressure has no way out.
    .do = Switch the power off. Open a valve or a vent before anything may heat.
danger-opened-hot = The water is not known to be cold: it scalds when the circuit is opened.
    .do = Keep it closed. Let it cool, measure it, let the pressure off, then open.
danger-liquid-changed-live = The liquid in the loop would change while power can start something.
    .do = Prove the unit dead, or lock compressor and heaters out. Then change the liquid.
danger-covers-off-live = Covers would be off while a supply is not proved dead or a charge not waited out: contact can kill.
    .do = Keep the covers on and your hands out. Lock off every supply, wait out the charge, prove it dead.
danger-power-on-unready = Power must not come on: cover, fan guard or earth is missing, or the electrics are not proved dry.
    .do = Keep the power off. Earth connected, electrics dry, guard and covers on: then switch on.
danger-power-on-gas = There is a refrigerant alarm or no reading that it is clear: a spark could light the gas.
    .do = Switch nothing here. Fresh air, people away, and read the detector. After an alarm call the certified person.
danger-element-tank-not-full = A supply is on while the cylinder is not full: a heating element that is not covered burns out and can start a fire.
    .do = Switch the supplies off. Fill the cylinder, let the air out, then switch on.
danger-compressor-no-water = Compressor or heaters may start while the loop does not hold plain water.
    .do = Keep them locked out. Rinse, prove the rinse, fill with water, open the valves.
danger-spray-live = Spray while the unit is not proved dead: water carries the current to you.
    .do = Put the lance down. Lock off and prove the unit dead.
danger-spray-bare = Spray would hit electrics that are not covered.
    .do = Put the lance down. Cover the electrics, then spray.
danger-spray-hot = The coil is not known to be cold: spray flashes to steam, and parts warp.
    .do = Let it cool until it is hand-cold, then spray.
danger-insulation-test-unready = The test voltage would meet electronics that are plugged in, or a unit that is not proved dead.
    .do = Prove the unit dead, unplug boards, drives and sensors, then test.
danger-hand-over-unchecked = The hot water is not checked for scalding, or nobody knows about the disinfecting temperature.
    .do = Measure at the tap. Read the cylinder, or tell the owner that the reheat is still to come.
danger-fitting-opened-unready = It is not sure that the water behind the fitting is cold and without pressure: it scalds, and the fitting flies.
    .do = Leave it shut. Shut the feed, let the pressure out, measure that it is cold, then open it.
danger-circuit-uncertified = The refrigerant circuit would be opened by a person without the certificate.
    .do = Leave it shut. Measure with clamps at the pipes, or call the certified person.
danger-compressor-no-air = Compressor or fan may start while the way of the air is shut: pressure and heat rise, or the coil freezes.
    .do = Keep it locked out. Take sheets and plugs away, put filter and ducts back.
danger-guard-off-live = The fan guard would be off while the fan may start by itself: it cuts.
    .do = Hands out. Put the guard on, or lock off and prove it dead.
danger-opened-in-gas = A cover would be opened without a clear detector reading, or with something near that can make a spark.
    .do = Leave it shut. Sparks away, fresh air, read the detector low down. After an alarm call the certified person.
danger-hand-over-unsafe = Something unsafe was found and is not mended: the unit must not be handed over running.
    .do = Mend it and write at the finding what you did. If it cannot be mended here: break off, lock and tag the isolator, and tell the owner.
danger-left-untagged = The power is off, and no lock and tag hang on the isolator: somebody may switch it on.
    .do = Hang your lock and tag on the isolator. If you cannot: tell the owner that nobody may switch it on, and call the office.

## Hazards

caution-shock = Electric shock
    .text = Contact with live parts can kill. Lock off, tag, prove dead; dry hands, insulated tools. Local codes say who may do it; the licensed person and the maker's instructions come first.
caution-stored-energy = Charge after switching off
    .text = Capacitors and drives hold a dangerous charge after the power is off. Wait out the time on the label, test before you touch, insulated gloves and tools. The maker's instructions and the licensed person come first.
caution-acid = Acid
    .text = Acid blinds and burns, and its gas hurts the lungs. Goggles and face shield, long chemical gloves, apron, eyewash in reach, fresh air. Label, maker's instructions and local codes come first; the licensed person decides in doubt.
caution-alkali = Alkali
    .text = Alkaline cleaners burn eyes and skin, and you feel it late. Goggles, long chemical gloves, apron; never near acid. Label, maker's instructions and local codes come first; the licensed person decides in doubt.
caution-spray = Pressure spray
    .text = A jet cuts skin and throws dirt and cleaner into the face. Goggles, gloves, firm stand, low pressure, nobody in front. Label, maker's instructions and local codes come first; the licensed person decides in doubt.
caution-hot = Hot water and surfaces
    .text = Hot water, the compressor and its pipes burn and scald. Let them cool and measure; gloves, face away when opening. Maker's instructions and local codes come first; the licensed person decides in doubt.
caution-fan = Turning fan
    .text = The fan starts without warning and cuts. Hands, hair and clothes away; guard on whenever power may come. Maker's instructions and local codes come first; the licensed person decides in doubt.
caution-flammable = Refrigerant that can burn
    .text = A leak gathers low and a spark lights it. Detector first; phone, torch and vacuum cleaner outside until it is clear; fresh air, no flame. The plate, maker's instructions and local codes come first; only the certified person works on a leak.
caution-height = Work at height
    .text = A fall can kill. Firm stand or platform, ladder tied and footed, not alone, not in wind or wet. Local codes come first; the licensed person on the spot decides.
caution-scald = Scalding and legionella
    .text = Water above 50 °C (122 °F) scalds within seconds; a cylinder kept too cool breeds legionella. Measure at the tap, check the mixing valve, avoid breathing the mist. Maker's instructions, local codes and the licensed person come first.
caution-backflow = Drinking water in danger
    .text = Rinse water or chemicals can be sucked back into the mains. Air gap or backflow protection, gloves clean, valves shut until the rinse is proved. Local codes and the licensed plumber come first.
caution-sharp = Sharp fins and edges
    .text = Fins and sheet metal cut to the bone. Cut-proof gloves, long sleeves, goggles; nothing forced. Maker's instructions and local codes come first; the licensed person decides in doubt.
caution-refrigerant = Refrigerant circuit
    .text = It is under high pressure; what escapes freezes skin, chokes and may burn. Goggles and gloves; loosen no fitting, bend no pipe. Only the certified person opens it; maker's instructions and local codes come first.
caution-disposal = Spent chemicals
    .text = They hurt people, drains and water. Goggles and gloves; neutralise, keep apart, never into a storm drain. Label, maker's instructions and local rules come first; the licensed person decides in doubt.
caution-chlorine = Chlorine gas
    .text = Acid on pool chemicals or bleach gives a gas that kills. Never in one place, one bucket, one hose; rinse between them; smell of chlorine: out, fresh air, call help. Label, maker's instructions and local rules come first.
caution-high-pressure = Circuit above 100 bar
    .text = A circuit with R744 holds more than 100 bar, also at rest in the sun. Goggles, gloves, no fitting loosened, no gauge of another refrigerant. Only the certified person opens it; plate, maker's instructions and local codes come first.
caution-suffocation = Gas that takes the air away
    .text = Carbon dioxide and nitrogen gather low down and put people to sleep without a smell. Door open, fresh air, detector where the room is small; dizzy: out at once. Local codes come first; the licensed person decides in doubt.
