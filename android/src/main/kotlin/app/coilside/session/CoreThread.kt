package app.coilside.session

import android.os.Handler
import android.os.Looper
import java.util.concurrent.Callable
import java.util.concurrent.ExecutionException
import java.util.concurrent.Executors
import java.util.concurrent.RejectedExecutionException
import java.util.concurrent.TimeUnit
import java.util.concurrent.atomic.AtomicInteger

/** The one thread on which the core is spoken with, and what is still to come from it. */
class CoreThread {
    private val thread = Executors.newSingleThreadExecutor { Thread(it, "core") }
    private val main = Handler(Looper.getMainLooper())
    private val pending = AtomicInteger()

    @Volatile
    var isClosed = false
        private set

    /** While anything is queued or under way. */
    val busy: Boolean get() = pending.get() > 0

    /** Something else is under way until [end]. */
    fun begin() {
        pending.incrementAndGet()
    }

    fun end() {
        pending.decrementAndGet()
    }

    /** Works on the thread, after what was queued before; [told] runs on the main thread. */
    fun <T> queue(work: () -> T, told: (T) -> Unit) {
        begin()
        thread.execute {
            val answer = work()
            main.post {
                told(answer)
                end()
            }
        }
    }

    /** Works on the thread and waits for it, from another thread; none where it was closed or the work failed. */
    fun <T> ask(work: () -> T?): T? {
        if (isClosed) return null
        begin()
        try {
            return thread.submit(Callable(work)).get()
        } catch (closed: RejectedExecutionException) {
            return null
        } catch (failed: ExecutionException) {
            return null
        } catch (stopped: InterruptedException) {
            Thread.currentThread().interrupt()
            return null
        } finally {
            end()
        }
    }

    /** Nothing more is queued. [last] works on the thread, and is waited for. */
    fun close(last: () -> Unit) {
        isClosed = true
        thread.execute(last)
        thread.shutdown()
        thread.awaitTermination(CLOSE_S, TimeUnit.SECONDS)
    }

    private companion object {
        const val CLOSE_S = 20L
    }
}
