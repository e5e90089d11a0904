// ThreadSanitizer sees what is compiled with it and libc's locks. Debian's Qt is not, and its own locks are plain
// futexes: that an event posted by one thread is read by another afterwards is not seen, and everything handed over
// that way would be called a race. A suppression would have to silence the lambdas that are handed over, and the real
// races in them; so the places where Qt locks are told here: who posts releases what the receiver's thread acquires
// with its next event, as the mutex of that thread's list of events does. Compiled into the test programs of a
// ThreadSanitizer build, nowhere else.
#include <dlfcn.h>
#include <sanitizer/tsan_interface.h>
#include <QCoreApplication>
#include <QRunnable>
#include <QThread>
#include <QThreadPool>

namespace QtPrivate {
class QSlotObjectBase;
}

namespace {

/// Stands for the mutex of a thread's events. A QThread of its own address: the program never looks into it.
char poolLock;  ///< stands for the mutex of whatever pool

/// What is handed to a pool is looked into only when its thread has acquired the mutex.
class Task : public QRunnable {
 public:
  explicit Task(std::function<void()> what) : what_(std::move(what)) {}
  void run() override {
    __tsan_acquire(&poolLock);
    what_();
    what_ = nullptr;
    __tsan_release(&poolLock);
  }

 private:
  std::function<void()> what_;
};

void release(const QThread* thread) { __tsan_release(const_cast<QThread*>(thread)); }
void acquire(const QThread* thread) { __tsan_acquire(const_cast<QThread*>(thread)); }

template <typename Function>
Function* real(const char* symbol) {
  void* const found = dlsym(RTLD_NEXT, symbol);
  if (found == nullptr) qFatal("Qt has no %s: what shows its locks to ThreadSanitizer must be written anew", symbol);
  return reinterpret_cast<Function*>(found);
}

bool eventComes(void** /*receiver, event, result*/) {
  acquire(QThread::currentThread());
  return false;  // to its receiver
}

[[maybe_unused]] const bool listening = QInternal::registerCallback(QInternal::EventNotifyCallback, eventComes);

}  // namespace

#define OHMKIN_INVOKE \
  "_ZN11QMetaObject16invokeMethodImplEP7QObjectPN9QtPrivate15QSlotObjectBaseEN2Qt14ConnectionTypeEPv"
#define OHMKIN_ACTIVATE "_ZN11QMetaObject8activateEP7QObjectPKS_iPPv"
#define OHMKIN_QUIT "_ZN7QThread4quitEv"
#define OHMKIN_WAIT "_ZN7QThread4waitE14QDeadlineTimer"
#define OHMKIN_POOL_START "_ZN11QThreadPool5startESt8functionIFvvEEi"
#define OHMKIN_POOL_WAIT "_ZN11QThreadPool11waitForDoneEi"

bool invokeShown(QObject* receiver, QtPrivate::QSlotObjectBase* slot, Qt::ConnectionType type,
                 void* result) asm(OHMKIN_INVOKE);
bool invokeShown(QObject* receiver, QtPrivate::QSlotObjectBase* slot, Qt::ConnectionType type, void* result) {
  static auto* const invoke = real<decltype(invokeShown)>(OHMKIN_INVOKE);
  release(receiver->thread());
  return invoke(receiver, slot, type, result);
}

/// A signal's receivers are not known here. From a worker they are the window's.
void activateShown(QObject* sender, const QMetaObject* meta, int signal, void** arguments) asm(OHMKIN_ACTIVATE);
void activateShown(QObject* sender, const QMetaObject* meta, int signal, void** arguments) {
  static auto* const activate = real<decltype(activateShown)>(OHMKIN_ACTIVATE);
  const QCoreApplication* const program = QCoreApplication::instance();
  if (program != nullptr && QThread::currentThread() != program->thread()) release(program->thread());
  activate(sender, meta, signal, arguments);
}

void quitShown(QThread* thread) asm(OHMKIN_QUIT);
void quitShown(QThread* thread) {
  static auto* const quit = real<decltype(quitShown)>(OHMKIN_QUIT);
  release(thread);
  quit(thread);
}

bool waitShown(QThread* thread, QDeadlineTimer deadline) asm(OHMKIN_WAIT);
bool waitShown(QThread* thread, QDeadlineTimer deadline) {
  static auto* const wait = real<decltype(waitShown)>(OHMKIN_WAIT);
  const bool ended = wait(thread, deadline);
  if (ended) acquire(thread);
  return ended;
}

void startShown(QThreadPool* pool, std::function<void()> task, int priority) asm(OHMKIN_POOL_START);
void startShown(QThreadPool* pool, std::function<void()> task, int priority) {
  auto* const runnable = new Task(std::move(task));  // the pool's own, as the function it was given would be
  __tsan_release(&poolLock);
  pool->start(runnable, priority);
}

bool poolWaitShown(QThreadPool* pool, int milliseconds) asm(OHMKIN_POOL_WAIT);
bool poolWaitShown(QThreadPool* pool, int milliseconds) {
  static auto* const wait = real<decltype(poolWaitShown)>(OHMKIN_POOL_WAIT);
  const bool done = wait(pool, milliseconds);
  if (done) __tsan_acquire(&poolLock);
  return done;
}
