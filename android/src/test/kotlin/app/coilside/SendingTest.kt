package app.coilside

import android.app.job.JobInfo
import android.net.ConnectivityManager
import android.net.NetworkInfo
import app.coilside.send.SendJob
import app.coilside.support.English
import app.coilside.support.Jobs
import app.coilside.support.OtherApp
import app.coilside.support.Photo
import app.coilside.support.Photos
import app.coilside.support.Record
import app.coilside.support.Sky
import app.coilside.support.Village
import app.coilside.support.Wired
import app.coilside.support.input
import app.coilside.support.withPress
import coilside.Action
import org.junit.After
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertSame
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.shadows.ShadowNetworkInfo

/** What is sent, in front and by the job, against a real office behind a wire that is cut, while processes on both sides are killed. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class SendingTest {
    @get:Rule
    val folder = TemporaryFolder()
    private lateinit var wired: Wired
    private val scene get() = wired.scene
    private val relay get() = wired.relay
    private val office get() = wired.office
    private val photos = ArrayList<Photo>()

    @Before
    fun begin() {
        wired = Wired(folder.root)
    }

    @After
    fun end() = wired.close()

    @Test
    fun `everything arrives over a wire that is cut, through killed processes, to the byte`() {
        wired.join()
        away()
        val visit = sealedVisit()
        val events = scene.phone.core { it.events(visit) }
        scene.phone.end()
        assertEquals("what waits must be planned to be sent", 1, Jobs.planned().size)
        assertTrue("and after the phone was switched off and on", Jobs.planned().single().isPersisted)
        assertEquals("and where there is a network", JobInfo.NETWORK_TYPE_ANY, Jobs.planned().single().networkType)
        assertEquals("and at once, for nobody is in front", 0, Jobs.planned().single().minLatencyMillis)

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
            if (runs == 1) ShellApp.close(RuntimeEnvironment.getApplication())
            if (runs == 2) {
                office.kill()
                office.start()
            }
        }
        println("sending: ${relay.cuts} cuts, $runs jobs, ${photos.size} photographs, ${photos.sumOf { it.bytes.size }} bytes")
        assertTrue("only ${relay.cuts} cuts", relay.cuts >= 4)
        office.kill()

        arrived(visit, events)
        for (photo in photos) assertArrayEquals(photo.bytes, office.photo(photo.digest))
        assertEquals(emptyList<String>(), office.leftOver())
    }

    @Test
    fun `what waits is planned once, as soon as it waits, and goes out though the process ended in front without a word`() {
        wired.join()
        away()
        assertEquals("nothing waits", emptyList<Any>(), Jobs.planned())
        begin(Action.StartVisit(Village.ASSIGNMENT))
        val planned = checkNotNull(Jobs.planned().singleOrNull()) { "what waits is not planned while the app is in front" }
        assertTrue("the app in front sends by itself, the job stands by", planned.minLatencyMillis > 0)
        scene.technician.goTo("break-off")
        val reason = checkNotNull(scene.phone.window.input("break-off"))
        scene.hand.type(reason, "Called away")
        scene.hand.enter(reason)
        assertSame("it is planned again at each press", planned, Jobs.planned().single())

        assertEquals("a job that finds the app in front leaves the work to it", false, Jobs.run(SendJob::class.java, JOB_MS))
        assertTrue("and stands by again", Jobs.planned().single().minLatencyMillis > 0)

        val visit = scene.phone.core { it.currentVisit() ?: "" }
        val events = scene.phone.core { it.events(visit) }
        scene.phone.kill()
        relay.holds = true
        assertEquals(false, Jobs.run(SendJob::class.java, JOB_MS))
        arrived(visit, events)
    }

    @Test
    fun `a photograph that waits for a better network goes at once, from the app in front, when it is asked to be sent now`() {
        wired.join()
        scene.technician.goTo("outbox")
        scene.hand.tap(scene.technician.find(Action.Set("send-originals", "unmetered")))
        val manager = RuntimeEnvironment.getApplication().getSystemService(ConnectivityManager::class.java)
        val paid = ShadowNetworkInfo.newInstance(NetworkInfo.DetailedState.CONNECTED, ConnectivityManager.TYPE_MOBILE, 0, true, NetworkInfo.State.CONNECTED)
        shadowOf(manager).setActiveNetworkInfo(paid)
        wired.toRound()
        begin(Action.StartVisit(Village.ASSIGNMENT))
        scene.technician.goTo("photographs")
        shoot(0)
        val visit = scene.phone.core { it.currentVisit() ?: "" }
        val events = scene.phone.core { it.events(visit) }
        wired.await("the events did not go over the paid network") { office.events(visit).size == events.size }
        // Long enough for several looks of the sender.
        val until = System.nanoTime() + RESTS_NS
        wired.await("") { System.nanoTime() > until }
        assertNull("it goes over a network that is paid by what goes over it", office.photo(photos.single().digest))

        scene.technician.goTo("outbox")
        scene.hand.tap(scene.technician.find(Action.SendNow))
        wired.await("it is not sent now") { office.photo(photos.single().digest) != null }
        assertArrayEquals(photos.single().bytes, office.photo(photos.single().digest))
    }

    @Test
    fun `a job whose time is nearly over begins nothing more`() {
        wired.join()
        away()
        begin(Action.StartVisit(Village.ASSIGNMENT))
        val visit = scene.phone.core { it.currentVisit() ?: "" }
        val events = scene.phone.core { it.events(visit) }
        scene.phone.away {
            val sender = ShellApp.sender(RuntimeEnvironment.getApplication())
            sender.want(this, forMs = SendJob.WINDOW_MS)
            scene.ground.pass(SendJob.WINDOW_MS - SHORT_MS)
            relay.holds = true
            Thread.sleep(RESTS_NS / 1_000_000)
            assertEquals("it begins what it cannot end", 0, office.events(visit).size)
            sender.want(this, forMs = SendJob.WINDOW_MS)
            wired.await("nothing is sent with all the time that a job has") { office.events(visit).size == events.size }
            sender.leave(this)
        }
    }

    /** The office cannot be reached. */
    private fun away() {
        relay.holds = false
        relay.drop()
    }

    private fun arrived(visit: String, events: List<String>) {
        val there = office.events(visit)
        assertEquals(events.size, there.size)
        events.zip(there).forEach { (here, stored) -> assertArrayEquals(here.toByteArray(), stored) }
        assertEquals(null, Record(there.map { it.decodeToString() }).broken())
    }

    private fun begin(start: Action) {
        Sky.on()
        Sky.allow()
        scene.hand.tap(scene.technician.find(start))
        Sky.fix()
        scene.phone.settle()
    }

    private fun shoot(number: Int) {
        scene.hand.tap(scene.technician.find(Action.Shoot("")))
        val camera = checkNotNull(OtherApp.openedBy(scene.phone.activity)) { "no camera opens: ${scene.words()}" }
        val photo = Photos.draw(100 + number, null, width = 1000)
        camera.writes(photo)
        camera.answers(scene.phone.activity, android.app.Activity.RESULT_OK)
        scene.phone.settle()
        photos += photo
    }

    /** Photographs, a reason to break off, and the seal. */
    private fun sealedVisit(): String {
        begin(Action.StartVisit(Village.ASSIGNMENT))
        scene.technician.goTo("photographs")
        repeat(PHOTOS, ::shoot)
        val visit = scene.phone.core { it.currentVisit() ?: "" }
        scene.brokenOff()
        check(scene.phone.window.withPress(Action.Seal) == null)
        check(scene.phone.session.screen?.title == English["sealed-title"])
        return visit
    }

    private companion object {
        const val PHOTOS = 4
        const val CUTS = 12
        const val RUNS_MAX = 12
        const val JOB_MS = 120_000L
        const val SHORT_MS = 1_000L
        const val RESTS_NS = 2_000_000_000L
    }
}
