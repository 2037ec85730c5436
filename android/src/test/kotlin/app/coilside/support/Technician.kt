package app.coilside.support

import android.app.Activity
import coilside.Action
import coilside.Block
import coilside.DwellState
import coilside.Request

/** Works at the phone as a person would: looks at what it offers, then touches, types, photographs and waits. */
class Technician(val phone: Phone, private var photos: List<Photo>) {
    val hand = Hand(phone)

    /** What was typed, by field. */
    val typed = LinkedHashMap<String, String>()

    /** What was taken, in order. */
    val taken = ArrayList<Photo>()

    /** How many questions were answered by choosing. */
    var chosen = 0
        private set
    var waits = 0
        private set

    /** Alarms that rang and were not stopped yet. */
    private var ringing = 0

    /** The camera app that is in front. */
    var camera: OtherApp? = null
        private set

    /** Runs while the camera app is in front, after its picture is written: the system may need the memory. */
    var whileAway: () -> Unit = {}

    /** How a waiting time ends: by default the alarm rings while the app is open. */
    var rings: () -> Unit = { Bell.ring() }

    /** Does the next thing, and tells what it was. */
    fun next(): Move {
        camera = camera ?: OtherApp.openedBy(phone.activity)?.takeIf { it.isCamera }
        if (camera != null) return Move.Photograph.also { photograph() }
        if (phone.session.wanted.values.any { it is Request.Locate }) Sky.fix()
        phone.settle()
        val move = look(phone.window)
        when (move) {
            is Move.Press -> hand.tap(find(move.what))
            is Move.Hold -> hand.hold(find(move.what), HOLD_MS)
            is Move.Choose -> choose(move)
            is Move.Type -> type(move.field)
            Move.Photograph -> hand.tap(checkNotNull(phone.window.withRole("photo-take")))
            Move.SkipWait -> skip()
            Move.StopAlarm -> stop()
            Move.AllowPlace -> {
                hand.tap(checkNotNull(phone.window.withRole("place-allow")))
                check(Sky.answer(phone, granted = true)) { "nobody was asked for the place" }
            }
            is Move.Stuck -> error("the visit does not go on: ${move.why}\n${where()}")
        }
        phone.settle()
        return move
    }

    /** Goes on until the screen is as wanted; [before] runs before each look, [after] after each move, with its number. */
    fun playUntil(before: () -> Unit = {}, after: (Int, Move) -> Unit = { _, _ -> }, reached: () -> Boolean) {
        var last: Move? = null
        var again = 0
        var moves = 0
        while (true) {
            before()
            if (reached()) return
            check(moves < MOVES_MAX) { "no end after $MOVES_MAX moves: ${where()}" }
            val move = next()
            moves += 1
            again = if (move == last) again + 1 else 0
            last = move
            check(again <= 2) { "the same over and over: $move\n${where()}" }
            after(moves, move)
        }
    }

    /** Goes to a screen by the menu. */
    fun goTo(place: String) {
        val wanted = Action.Go(place)
        if (phone.window.withPress(wanted) == null) hand.tap(checkNotNull(phone.window.withRole("menu-key")) { "there is no menu: ${where()}" })
        hand.tap(find(wanted))
    }

    fun find(action: Action) = checkNotNull(phone.window.withPress(action)) { "cannot be pressed: $action\n${where()}" }

    private fun choose(move: Move.Choose) {
        val which = Answers.chosen(move.field, move.options.map { it.first })
        hand.tap(find(move.options[which].second))
        chosen += 1
    }

    private fun type(field: String) {
        val text = Answers.typed(field)
        val input = checkNotNull(phone.window.input(field))
        hand.tap(input)
        val keys = text.map { letter -> if (letter == '.') "key:." else "key:$letter" }
        if (keys.all { phone.window.withRole(it) != null }) {
            for (key in keys) hand.tap(checkNotNull(phone.window.withRole(key)) { "the key $key went away" })
            hand.tap(checkNotNull(phone.window.withRole("key:done")))
        } else {
            hand.write(input, text)
            hand.enter(input)
        }
        typed[field] = text
    }

    private fun photograph() {
        val app = checkNotNull(camera)
        val photo = checkNotNull(photos.firstOrNull()) { "no photograph is left" }
        photos = photos.drop(1)
        app.writes(photo)
        whileAway()
        camera = null
        app.answers(phone.activity, Activity.RESULT_OK)
        phone.settle()
        // It waits a little for its place where the last fix is old.
        if (phone.session.wanted.isNotEmpty()) Sky.fix()
        phone.settle()
        taken += photo
    }

    private fun skip() {
        val alarmMs = checkNotNull(Bell.inMs()) { "a waiting time runs and no alarm is set: ${where()}" }
        // Frames that were drawn count for the system's clock and not for the ground's.
        val dwell = phone.window.all().mapNotNull { it.block as? Block.Dwell }.first { it.state == DwellState.RUNNING }
        phone.ground.pass(maxOf(alarmMs, dwell.leastAtUtcMs - phone.ground.utcMs) + 1)
        rings()
        phone.settle()
        waits += 1
        ringing += 1
        checkNotNull(phone.window.withRole("alarm-stop")) { "the time is up and nothing rings: ${where()}" }
    }

    private fun stop() {
        check(ringing > 0) { "an alarm rings for nothing: ${where()}" }
        ringing -= 1
        hand.tap(checkNotNull(phone.window.withRole("alarm-stop")))
    }

    /** What stands on the screen. */
    fun where(): String = "${phone.session.screen?.place}: ${phone.window.words()}"

    private companion object {
        /** Longer than the shell's own hold of 1.5 s. */
        const val HOLD_MS = 1900L
        const val MOVES_MAX = 600
    }
}
