package app.coilside.support

import app.coilside.ShellApp
import coilside.Action
import java.io.File
import org.robolectric.RuntimeEnvironment

/** A phone that joined a real office, over a wire that can be cut. */
class Wired(folder: File) : AutoCloseable {
    val office: Office
    val relay: Relay
    val scene: Scene

    init {
        Patch.known()
        office = Office(File(folder, "office").apply { mkdirs() }).also(Office::start)
        relay = Relay(office.port, seed = 11, cutAfterBytesMax = 60_000)
        scene = Scene(File(folder, "store").apply { mkdirs() })
        scene.ground.speed = CLOCK_SPEED
    }

    /** By the code on the office's page and the address of the wire to it, typed on the screen for joining. */
    fun join(): Wired {
        atJoining()
        type("join-code", office.joinCode().code)
        type("join-office", relay.address)
        type("join-name", "Phone of the tests")
        pressJoin(relay.address)
        toRound()
        return this
    }

    /** What the office tells draws the screen anew at any moment: a press may fall beside a button that just went, as a finger's may. */
    fun toRound() {
        fun shown() = scene.phone.window.withPress(Action.StartVisit(Village.ASSIGNMENT)) != null
        await("the round is not shown") {
            if (!shown()) scene.technician.goTo("round")
            shown()
        }
    }

    /** The app is open at the screen for joining. */
    fun atJoining() {
        scene.due()
        scene.technician.goTo("outbox")
        scene.hand.tap(scene.technician.find(Action.Go("join")))
    }

    fun type(field: String, text: String) {
        val input = checkNotNull(scene.phone.window.input(field)) { scene.words() }
        scene.hand.type(input, text)
        scene.hand.enter(input)
    }

    /** Joins, and waits until the screen says of [address] that it is joined. */
    fun pressJoin(address: String) {
        scene.hand.tap(scene.technician.find(Action.Join))
        await("the phone did not join") {
            scene.phone.session.refresh()
            scene.phone.settle()
            scene.words().contains(address)
        }
    }

    /** Waits while the app is in front and the time goes by. */
    fun await(what: String, atMostMs: Long = AWAIT_MS, reached: () -> Boolean) {
        val until = System.nanoTime() + atMostMs * 1_000_000
        while (!reached()) {
            check(System.nanoTime() < until) { "$what: ${scene.words()}" }
            scene.pass(0)
            Thread.sleep(LOOK_MS)
        }
    }

    override fun close() {
        scene.phone.close()
        relay.close()
        office.close()
        ShellApp.close(RuntimeEnvironment.getApplication())
    }

    private companion object {
        const val AWAIT_MS = 30_000L
        const val LOOK_MS = 50L

        /** In a test's half minute the phone's clock stays within what an office grants a clock that is ahead. */
        const val CLOCK_SPEED = 4L
    }
}
