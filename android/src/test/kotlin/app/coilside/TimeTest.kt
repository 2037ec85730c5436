package app.coilside

import android.graphics.Bitmap
import android.graphics.Canvas
import android.text.InputType
import android.widget.EditText
import app.coilside.support.Scene
import app.coilside.support.all
import app.coilside.support.field
import coilside.Action
import java.io.File
import java.lang.management.ManagementFactory
import javax.management.ObjectName
import org.junit.After
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What is pressed shows at once, and what is opened is closed. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class TimeTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }

    @After
    fun close() = scene.phone.close()

    @Test
    fun `what is done at the longest screen is drawn within a frame`() {
        scene.waiting()
        val (longest, views) = longest { true }
        measured("'$longest', the longest screen ($views views)") { Action.Draft("finding", "Drain hose kinked, $it") }
    }

    @Test
    fun `what is typed at the longest screen that takes words is drawn within a frame`() {
        scene.waiting()
        val (longest, views) = longest { fields().any() }
        val field = checkNotNull(fields().first().field)
        measured("'$longest', whose field '$field' changes ($views views)") { Action.Draft(field, "Words of the tests, $it") }
    }

    private fun fields() = scene.phone.window.all().filterIsInstance<EditText>().filter { it.inputType and InputType.TYPE_CLASS_TEXT != 0 }

    /** Goes to the place with the most views; returns it and how many they are. */
    private fun longest(among: () -> Boolean): Pair<String, Int> {
        val lengths = PLACES.associateWith { place ->
            scene.technician.goTo(place)
            if (among()) scene.phone.window.all().count() else 0
        }
        val (longest, views) = lengths.maxBy { it.value }
        scene.technician.goTo(longest)
        return longest to views
    }

    private fun measured(where: String, action: (Int) -> Action) {
        // A phone draws with its graphics chip into memory that it has: the bitmap is made once.
        val bitmap = Bitmap.createBitmap(scene.phone.window.width, scene.phone.window.height, Bitmap.Config.ARGB_8888)
        // What runs for the first hundreds of times is still being translated for the processor; on a phone that is done before.
        val parts = (1..TIMES).map { time -> part(action(time), bitmap) }.drop(TIMES * 3 / 4)
        fun median(of: (Part) -> Double) = parts.map(of).sorted().let { it[it.size / 2] }
        val whole = median(Part::processorMs)
        println(
            "time: act and redraw of $where, medians: %.1f ms of processor time (the core %.1f, the shell %.1f, drawing in software %.1f), %.1f ms on the wall".format(
                whole, median(Part::coreMs), median(Part::shellMs), median(Part::drawMs), median(Part::wallMs),
            ),
        )
        assertTrue("$whole ms", whole < FRAME_MS)
    }

    private fun part(action: Action, bitmap: Bitmap): Part {
        val begun = System.nanoTime()
        val before = Spent.now()
        scene.phone.session.act(action)
        scene.phone.settle()
        val acted = Spent.now()
        scene.phone.window.draw(Canvas(bitmap))
        val drawn = Spent.now()
        return Part(acted.coreMs - before.coreMs, acted.shellMs - before.shellMs, drawn.shellMs - acted.shellMs, (System.nanoTime() - begun) / 1e6)
    }

    /** What one action took, milliseconds: of the processor for the core, for the shell and for drawing, and by the clock on the wall. */
    private class Part(val coreMs: Double, val shellMs: Double, val drawMs: Double, val wallMs: Double) {
        val processorMs get() = coreMs + shellMs + drawMs
    }

    /** The processor time that the two threads at work took so far, milliseconds: what else the machine does is not counted. */
    private class Spent(val coreMs: Double, val shellMs: Double) {
        companion object {
            private val threads = ManagementFactory.getThreadMXBean()

            fun now(): Spent {
                val core = threads.getThreadInfo(threads.allThreadIds).filterNotNull().single { it.threadName == "core" }
                return Spent(threads.getThreadCpuTime(core.threadId) / 1e6, threads.currentThreadCpuTime / 1e6)
            }
        }
    }

    @Test
    fun `a thousand openings and closings leave no file, no thread and no memory behind`() {
        val app = RuntimeEnvironment.getApplication()
        scene.due()
        scene.phone.end()
        fun cycles(times: Int) = repeat(times) {
            ShellApp.session(app)
            scene.phone.settle()
            ShellApp.close(app)
        }
        cycles(WARM)
        val before = held()
        cycles(CYCLES)
        val after = held()
        println("cycles: before $before, after $CYCLES $after")
        assertTrue("files: $before, $after", after.files <= before.files + 3)
        assertTrue("threads: $before, $after", after.threads <= before.threads + 3)
        assertTrue("memory: $before, $after", after.residentKb <= before.residentKb + GROWTH_MAX_KB)
    }

    private data class Held(val files: Int, val threads: Int, val residentKb: Long)

    private fun held(): Held {
        sweep()
        Thread.sleep(200)
        val resident = File("/proc/self/status").readLines().first { it.startsWith("VmRSS:") }.filter(Char::isDigit).toLong()
        return Held(File("/proc/self/fd").list().orEmpty().size, File("/proc/self/task").list().orEmpty().size, resident)
    }

    /** Counting what the heap holds sweeps it first, always: a plain request to sweep is turned down here (see `pom.xml`). */
    private fun sweep() {
        val counted = ManagementFactory.getPlatformMBeanServer()
            .invoke(ObjectName("com.sun.management:type=DiagnosticCommand"), "gcClassHistogram", arrayOf(emptyArray<String>()), arrayOf("[Ljava.lang.String;"))
        check("$counted".contains("Total"))
    }

    private companion object {
        /** The screens of a visit that grow with it. */
        val PLACES = listOf("now", "phases", "photographs", "readings", "findings", "emergency", "history")
        const val TIMES = 400

        /** One frame of a phone's display. */
        const val FRAME_MS = 16.0
        const val WARM = 150
        const val CYCLES = 1000

        /** A core that is not freed keeps some hundred kilobytes: a thousand of them would be far more. */
        const val GROWTH_MAX_KB = 60_000
    }
}
