package app.coilside

import app.coilside.send.SendJob
import app.coilside.support.Jobs
import app.coilside.support.Office
import app.coilside.support.OtherApp
import app.coilside.support.Patch
import app.coilside.support.Photo
import app.coilside.support.Photos
import app.coilside.support.Record
import app.coilside.support.Relay
import app.coilside.support.Scene
import app.coilside.support.Sky
import app.coilside.support.input
import app.coilside.support.withPress
import app.coilside.support.withRole
import coilside.Action
import org.junit.After
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The job that sends, against a real office behind a wire that is cut, while processes on both sides are killed: nothing is lost. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class SendingTest {
    @get:Rule
    val folder = TemporaryFolder()
    private lateinit var office: Office
    private lateinit var relay: Relay
    private lateinit var scene: Scene
    private val photos = ArrayList<Photo>()

    @Before
    fun begin() {
        Patch.known()
        office = Office(folder.newFolder("office")).also(Office::start)
        relay = Relay(office.port, seed = 11, cutAfterBytesMax = 60_000)
        scene = Scene(folder.newFolder("store"))
        scene.ground.isLive = true
    }

    @After
    fun end() {
        scene.phone.close()
        relay.close()
        office.close()
    }

    @Test
    fun `everything arrives over a wire that is cut, through killed processes, to the byte`() {
        join()
        relay.holds = false
        relay.drop()
        val visit = sealedVisit()
        val events = scene.phone.core { it.events(visit) }
        scene.phone.end()
        assertEquals("what waits must be planned to be sent", 1, Jobs.planned().size)

        relay.holds = true
        relay.cut(CUTS)
        var runs = 0
        var again = true
        while (again) {
            runs += 1
            check(runs < RUNS_MAX) { "not there after $RUNS_MAX jobs: ${office.events(visit).size} of ${events.size} events" }
            // The system ends the first job with its process, and at the second the office goes away for a while.
            again = Jobs.run(SendJob::class.java, JOB_MS) { runs == 1 && relay.cuts >= 2 || runs == 2 && relay.cuts >= 4 }
            println("sending: job $runs ends with ${relay.cuts} cuts, ${office.events(visit).size} of ${events.size} events, ${photos.count { office.photo(it.digest) != null }} photographs")
            if (runs == 1) ShellApp.close(org.robolectric.RuntimeEnvironment.getApplication())
            if (runs == 2) {
                office.kill()
                office.start()
            }
        }
        println("sending: ${relay.cuts} cuts, $runs jobs, ${photos.size} photographs, ${photos.sumOf { it.bytes.size }} bytes")
        assertTrue("only ${relay.cuts} cuts", relay.cuts >= 4)
        office.kill()

        val there = office.events(visit)
        assertEquals(events.size, there.size)
        events.zip(there).forEach { (here, stored) -> assertArrayEquals(here.toByteArray(), stored) }
        assertEquals(null, Record(there.map { it.decodeToString() }).broken())
        for (photo in photos) assertArrayEquals(photo.bytes, office.photo(photo.digest))
        assertEquals(emptyList<String>(), office.leftOver())
    }

    /** By the code on the office's page and the address of the wire to it, typed on the screen for joining. */
    private fun join() {
        scene.due()
        scene.technician.goTo("outbox")
        scene.hand.tap(scene.technician.find(Action.Go("join")))
        for ((field, text) in listOf("join-code" to office.joinCode(), "join-office" to relay.address, "join-name" to "Phone of the tests")) {
            val input = checkNotNull(scene.phone.window.input(field)) { scene.words() }
            scene.hand.type(input, text)
            scene.hand.enter(input)
        }
        scene.hand.tap(scene.technician.find(Action.Join))
        val until = System.nanoTime() + JOIN_NS
        while (scene.phone.core { it.screen(scene.ground.now()).screen.toString() }.contains("joining=true") || !joined()) {
            check(System.nanoTime() < until) { "the phone did not join: ${scene.words()}" }
            scene.pass(0)
            Thread.sleep(50)
        }
        scene.technician.goTo("round")
    }

    private fun joined(): Boolean {
        scene.phone.session.refresh()
        scene.phone.settle()
        return scene.words().contains(relay.address)
    }

    /** Photographs, a reason to break off, and the seal. */
    private fun sealedVisit(): String {
        Sky.on()
        Sky.allow()
        scene.hand.tap(scene.technician.find(Action.StartVisit(app.coilside.support.Village.ASSIGNMENT)))
        Sky.fix()
        scene.phone.settle()
        scene.technician.goTo("photographs")
        repeat(PHOTOS) { number ->
            scene.hand.tap(scene.technician.find(Action.Shoot("")))
            val camera = checkNotNull(OtherApp.openedBy(scene.phone.activity)) { "no camera opens: ${scene.words()}" }
            val photo = Photos.draw(100 + number, null, width = 1000)
            camera.writes(photo)
            camera.answers(scene.phone.activity, android.app.Activity.RESULT_OK)
            scene.phone.settle()
            photos += photo
        }
        scene.technician.goTo("break-off")
        val reason = checkNotNull(scene.phone.window.input("break-off"))
        scene.hand.type(reason, "Called away")
        scene.hand.enter(reason)
        val visit = scene.phone.core { it.currentVisit() ?: "" }
        scene.technician.playUntil { scene.phone.session.screen?.title == app.coilside.support.English["sealed-title"] }
        check(scene.phone.window.withPress(Action.Seal) == null)
        return visit
    }

    private companion object {
        const val PHOTOS = 4
        const val CUTS = 12
        const val RUNS_MAX = 12
        const val JOB_MS = 120_000L
        const val JOIN_NS = 30_000_000_000
    }
}
